/** Everything that decides a training run, in one file. */
package org.pipwright.training.settings;
