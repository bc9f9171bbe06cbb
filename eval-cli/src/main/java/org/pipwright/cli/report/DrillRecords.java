package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.drill.Clarity;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.drill.Theme;

/**
 * Exercises from the mistakes in records of games.
 *
 * @param files the records, as the user named them
 * @param player whose mistakes; empty for everybody's
 * @param settings what decided which of them were taken
 */
public record DrillRecords(List<String> files, Optional<String> player, SelectionSettings settings)
        implements DrillSource {
    /**
     * Copies the names.
     *
     * @param files the records
     * @param player whose mistakes
     * @param settings what decided which of them were taken
     */
    public DrillRecords {
        files = List.copyOf(files);
    }

    @Override
    public String title() {
        return settings.theme().map(Theme::title).orElse("From our own games");
    }

    @Override
    public String about() {
        return settings.theme()
                .map(theme -> theme.about() + ", in games that were played")
                .orElse("mistakes that were made");
    }

    @Override
    public String origin(String net) {
        Clarity clarity = settings.clarity();
        return "Mistakes" + player.map(name -> " of " + name).orElse("") + " in " + String.join(", ", files)
                + ", the costliest first. Judged by net " + net + ", lookahead " + clarity.lookahead()
                + ". What was played gives away " + Numbers.size(clarity.cost())
                + " points (scaled to a single game) or more in each position; the second best choice gives away "
                + Numbers.size(clarity.margin()) + " or more.";
    }

    @Override
    public String mark() {
        return "";
    }

    @Override
    public void write(JsonGenerator json) throws IOException {
        json.writeStringField("source", "records");
        if (settings.theme().isPresent()) {
            json.writeStringField("theme", settings.theme().get().word());
        }
        json.writeArrayFieldStart("records");
        for (String file : files) {
            json.writeString(file);
        }
        json.writeEndArray();
        if (player.isPresent()) {
            json.writeStringField("player", player.get());
        }
        json.writeNumberField("wanted", settings.count());
        json.writeNumberField("leastCost", settings.clarity().cost());
        json.writeNumberField("leastMargin", settings.clarity().margin());
        json.writeNumberField("checkersApart", settings.apart());
        json.writeNumberField("lookahead", settings.clarity().lookahead());
    }
}
