/** How fast: play generation, features and inference, with other libraries on the same network as peers. */
package org.pipwright.bench.speed;
