/**
 * Questions and games on the machines of an Apache Spark cluster: the workforce behind {@code --cluster}, and {@link
 * org.pipwright.cluster.ClusterJudge} for programs that use Spark themselves. The one package that knows Spark.
 */
package org.pipwright.cluster;
