package org.pipwright.training.cuda;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says what is missing where a card cannot be used, and how to mend it. */
final class MissingCuda {
    /** What the system says of a library that another one needs. */
    private static final Pattern NEEDED = Pattern.compile("(lib[\\w+.-]*\\.so[.\\d]*): cannot open shared object file");

    /** Statuses of the CUDA runtime: the driver is too old, or there is none. */
    private static final int OLD_DRIVER = 35;

    private MissingCuda() {}

    /** Why no card was found, by the status of the search. */
    static String card(int status) {
        return status == OLD_DRIVER
                ? "the NVIDIA driver is missing or too old for CUDA 13: --device cuda needs one that knows it"
                : "no NVIDIA card was found: --device cuda needs one";
    }

    /** Which library does not load. */
    static String library(Throwable error) {
        for (Throwable e = error; e != null; e = e.getCause()) {
            Matcher needed = NEEDED.matcher(String.valueOf(e.getMessage()));
            if (needed.find()) {
                return needed.group(1).startsWith("libcuda.")
                        ? "no NVIDIA card was found: its driver's library " + needed.group(1) + " is missing"
                        : "the CUDA 13 library " + needed.group(1) + " is missing: install the CUDA 13 toolkit, or name"
                                + " the library's folder in LD_LIBRARY_PATH";
            }
        }
        String system = System.getProperty("os.name") + " " + System.getProperty("os.arch");
        return system.equals("Linux amd64")
                ? "the CUDA 13 libraries do not load: "
                        + String.valueOf(error.getMessage()).replaceAll("\\s+", " ")
                : "--device cuda is for Linux on x86-64, and this is " + system;
    }
}
