package org.pipwright.engine;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks what users of the library may rely on. All other types are internal, public only so that other packages and modules
 * of Pipwright can use them, and may change at any time. {@code org.pipwright.engine.judge.Judge} is where to begin.
 */
@Documented
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.CLASS)
public @interface PublicApi {}
