/** Samples to weights: our own sparse learner and Deeplearning4j, the reference it is checked against. */
package org.pipwright.training.learner;
