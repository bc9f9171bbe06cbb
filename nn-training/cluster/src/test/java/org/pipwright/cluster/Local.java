package org.pipwright.cluster;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaSparkContext;
import org.pipwright.engine.parallel.Workforce;

/** Spark with two threads of this process. */
final class Local implements AutoCloseable {
    final List<String> notes = new ArrayList<>();
    final Workforce workforce = new SparkWorkforces().open("local[2]", Map.of(), notes::add);
    final JavaSparkContext spark = JavaSparkContext.fromSparkContext(((SparkWorkforce) workforce).context());

    @Override
    public void close() {
        workforce.close();
    }
}
