package org.pipwright.cluster;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import org.apache.spark.SecurityManager;
import org.apache.spark.SparkConf;
import org.apache.spark.rpc.RpcAddress;
import org.apache.spark.rpc.RpcEnv;
import org.pipwright.engine.parallel.WorkforceException;

/**
 * Greets a master before an application is begun: Spark itself would go on trying for a minute where another secret, or
 * another program, is behind the port.
 */
final class Greeting {
    private static final String PATIENCE = "9s";

    private Greeting() {}

    /**
     * Sees that a master answers.
     *
     * @param master whom to greet
     * @param here address of this machine that it can be reached from
     * @param settings the application's
     * @throws WorkforceException if what listens there is no master, or has another secret
     */
    static void requireAnswer(Master master, InetAddress here, SparkConf settings) {
        SparkConf conf = settings.clone()
                .set("spark.rpc.lookupTimeout", PATIENCE)
                .set("spark.network.auth.rpcTimeout", PATIENCE);
        RpcEnv env = null;
        try {
            SecurityManager security = new SecurityManager(
                    conf,
                    scala.Option.empty(),
                    org.apache.spark.SecurityManager$.MODULE$.$lessinit$greater$default$3());
            String host = here.getHostAddress();
            env = RpcEnv.create("pipwright-greeting", host, host, 0, conf, security, 1, true);
            if (!answers(env, master)) {
                throw new WorkforceException("something listens at '" + master.url() + "', but does not answer as a"
                        + " master of Spark " + org.apache.spark.package$.MODULE$.SPARK_VERSION()
                        + " with this secret: check --cluster-settings and the port");
            }
        } catch (IllegalArgumentException e) {
            throw new WorkforceException("Spark cannot start: " + Failures.line(e));
        } finally {
            if (env != null) {
                env.shutdown();
            }
        }
    }

    private static boolean answers(RpcEnv env, Master master) {
        for (InetSocketAddress address : master.addresses()) {
            try {
                env.setupEndpointRef(
                        new RpcAddress(address.getHostString(), address.getPort()),
                        org.apache.spark.deploy.master.Master.ENDPOINT_NAME());
                return true;
            } catch (Exception e) {
                // Scala throws what it does not declare. The next one may answer.
                continue;
            }
        }
        return false;
    }
}
