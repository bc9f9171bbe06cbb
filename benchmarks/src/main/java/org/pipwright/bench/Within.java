package org.pipwright.bench;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The range of an option that takes a whole number; {@code cli.Main} holds every command line to it. */
@Target(ElementType.FIELD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Within {
    /** The smallest value. */
    int min();

    /** The largest value. */
    int max();
}
