/** The learner of Deeplearning4j, which our own is checked against. */
package org.pipwright.training.reference;
