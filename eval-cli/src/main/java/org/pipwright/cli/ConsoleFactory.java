package org.pipwright.cli;

import java.lang.reflect.Constructor;
import org.pipwright.cli.console.Console;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes commands, which take the console, and whatever else picocli asks for. */
final class ConsoleFactory implements IFactory {
    private final Console console;

    ConsoleFactory(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        for (Constructor<?> constructor : type.getDeclaredConstructors()) {
            if (constructor.getParameterCount() == 1 && constructor.getParameterTypes()[0] == Console.class) {
                return type.cast(constructor.newInstance(console));
            }
        }
        return CommandLine.defaultFactory().create(type);
    }
}
