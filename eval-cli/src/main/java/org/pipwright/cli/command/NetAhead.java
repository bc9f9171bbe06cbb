package org.pipwright.cli.command;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;

/**
 * The net that a command will ask for, loaded while the command line is read: in a JVM that has just started either takes a tenth
 * of a second and more, and a second processor has nothing to do yet. A net that nobody asks for in the end is left alone.
 */
public final class NetAhead {
    /** Commands that judge with a net, nearly whatever their options say. */
    private static final Set<String> COMMANDS = Set.of("rank", "odds", "cube", "rollout", "review", "drill");

    private static final Set<String> FOR_HELP = Set.of("-h", "--help");

    private static final String OPTION = "--net";

    private static volatile Optional<NetAhead> begun = Optional.empty();

    private final String name;
    private final FutureTask<Model> task;

    private NetAhead(String name) {
        this.name = name;
        task = new FutureTask<>(() -> ModelCatalog.shipped().load(name));
    }

    /**
     * Begins to load the net that the arguments seem to ask for, in a thread that does not keep the process alive.
     *
     * @param args the command and its options
     */
    public static void begin(String... args) {
        begun = Optional.empty();
        if (args.length > 1 && COMMANDS.contains(args[0]) && Arrays.stream(args).noneMatch(FOR_HELP::contains)) {
            NetAhead ahead = new NetAhead(named(args));
            begun = Optional.of(ahead);
            Thread thread = new Thread(ahead.task, "net");
            thread.setDaemon(true);
            thread.start();
        }
    }

    private static String named(String... args) {
        for (int i = 1; i < args.length; i++) {
            if (args[i].startsWith(OPTION + "=")) {
                return args[i].substring(OPTION.length() + 1);
            }
            if (args[i].equals(OPTION) && i + 1 < args.length) {
                return args[i + 1];
            }
        }
        return ModelCatalog.shipped().defaultName();
    }

    /** The net of that name, or of that file, as {@link ModelCatalog#load} gives it. */
    static Model load(String name) {
        FutureTask<Model> loading = begun.filter(ahead -> ahead.name.equals(name))
                .map(ahead -> ahead.task)
                .orElse(null);
        if (loading != null) {
            try {
                return loading.get();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } catch (ExecutionException e) {
                // Below it fails again, as if it had not been tried.
            }
        }
        return ModelCatalog.shipped().load(name);
    }
}
