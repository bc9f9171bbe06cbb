package org.pipwright.bench.speed;

import org.openjdk.jmh.annotations.Fork;

/** Inference on the vector kernel. */
@Fork(jvmArgsAppend = {"-Dpipwright.kernel=vector", "--add-modules=jdk.incubator.vector"})
public class VectorInferenceBenchmark extends InferenceBenchmark {}
