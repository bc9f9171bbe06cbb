package org.pipwright.bench.speed;

import org.openjdk.jmh.annotations.Fork;

/** Inference on the plain kernel. */
@Fork(jvmArgsAppend = "-Dpipwright.kernel=plain")
public class PlainInferenceBenchmark extends InferenceBenchmark {}
