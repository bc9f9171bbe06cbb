package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.drill.DrillSettings;

/**
 * Exercises from games of the judging net, where a weaker player goes wrong.
 *
 * @param settings what decided which exercises were found
 * @param weaker whose mistakes they are
 */
public record DrillOwnGames(DrillSettings settings, Contestant weaker) implements DrillSource {
    @Override
    public String title() {
        return settings.theme().title();
    }

    @Override
    public String about() {
        return settings.theme().about();
    }

    @Override
    public String origin(String net) {
        return "Judged by net " + net + ", lookahead " + settings.clarity().lookahead() + ". The weaker player is "
                + weaker.name() + ", who gives away "
                + Numbers.size(settings.clarity().cost())
                + (settings.theme().cube() ? " points (scaled to a single game)" : " points")
                + " or more in each position; the second best choice gives away "
                + Numbers.size(settings.clarity().margin()) + " or more. Seed " + settings.seed() + ".";
    }

    @Override
    public String mark() {
        return "seed " + settings.seed();
    }

    @Override
    public void write(JsonGenerator json) throws IOException {
        json.writeStringField("source", "own games");
        json.writeStringField("theme", settings.theme().word());
        json.writeNumberField("seed", settings.seed());
        json.writeNumberField("wanted", settings.count());
        json.writeNumberField("leastCost", settings.clarity().cost());
        json.writeNumberField("leastMargin", settings.clarity().margin());
        json.writeNumberField("checkersApart", settings.apart());
        json.writeNumberField("lookahead", settings.clarity().lookahead());
        Duels.contestant(json, "weaker", weaker);
    }
}
