/** What a cluster costs, beside threads of this machine. */
package org.pipwright.bench.cluster;
