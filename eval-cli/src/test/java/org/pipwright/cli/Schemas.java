package org.pipwright.cli;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.cli.report.CountJson;
import org.pipwright.cli.report.CubeJson;
import org.pipwright.cli.report.DrillJson;
import org.pipwright.cli.report.DuelReport;
import org.pipwright.cli.report.ErrorJson;
import org.pipwright.cli.report.OddsReport;
import org.pipwright.cli.report.RankJson;
import org.pipwright.cli.report.ReviewJson;
import org.pipwright.cli.report.RolloutJson;
import org.pipwright.cli.report.RollsJson;
import org.pipwright.cli.report.StandingsJson;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.position.PositionJson;

/** The published schemas, which refer to each other by their names. */
final class Schemas {
    private static final Map<String, String> TEXTS = Map.ofEntries(
            Map.entry("urn:pipwright:schema:duel:2", resource(DuelReport.SCHEMA)),
            Map.entry("urn:pipwright:schema:drill:3", resource(DrillJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:standings:1", resource(StandingsJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:rank:2", resource(RankJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:rolls:1", resource(RollsJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:count:2", resource(CountJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:odds:1", resource(OddsReport.SCHEMA)),
            Map.entry("urn:pipwright:schema:error:1", resource(ErrorJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:cube:2", resource(CubeJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:rollout:2", resource(RolloutJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:review:1", resource(ReviewJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:position:1", resource(PositionJson.SCHEMA)),
            Map.entry("urn:pipwright:schema:play:1", resource(PlayJson.SCHEMA)));

    private static final JsonSchemaFactory FACTORY = JsonSchemaFactory.getInstance(
            SpecVersion.VersionFlag.V202012, builder -> builder.schemaLoaders(loaders -> loaders.schemas(TEXTS)));

    private Schemas() {}

    private static String resource(String name) {
        try (InputStream in = Schemas.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    static String text(String name) {
        return TEXTS.entrySet().stream()
                .filter(entry -> entry.getKey().matches("urn:pipwright:schema:" + name + ":\\d+"))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow();
    }

    /** What a text breaks of a schema; nothing if it keeps to it. */
    static List<String> faults(String name, String json) {
        JsonSchema schema = FACTORY.getSchema(text(name));
        return schema.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .collect(Collectors.toList());
    }

    /** What a schema breaks of the schema of schemas. */
    static List<String> faultsOfSchema(String name) {
        JsonSchema meta = FACTORY.getSchema(java.net.URI.create(SpecVersion.VersionFlag.V202012.getId()));
        return meta.validate(text(name), InputFormat.JSON).stream()
                .map(Object::toString)
                .collect(Collectors.toList());
    }
}
