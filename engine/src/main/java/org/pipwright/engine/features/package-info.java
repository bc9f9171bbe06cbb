/** Position to network input: numbered feature sets. */
package org.pipwright.engine.features;
