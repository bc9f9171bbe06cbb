package org.pipwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.InvalidPositionException;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;

/** The published schemas accept what is printed and refuse what the readers refuse for its form. */
class SchemaTest {
    private static final JsonSchemaFactory SCHEMAS = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);

    private static String resource(String name) throws IOException {
        try (InputStream in = Position.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static JsonSchema schema(String name) throws IOException {
        return SCHEMAS.getSchema(resource(name));
    }

    private static Set<ValidationMessage> faults(JsonSchema schema, String text) {
        return schema.validate(text, InputFormat.JSON);
    }

    @ParameterizedTest
    @ValueSource(strings = {PositionJson.SCHEMA, PlayJson.SCHEMA})
    void eachSchemaIsASchemaAndItsExamplesKeepToIt(String name) throws IOException {
        String text = resource(name);
        JsonNode node = new ObjectMapper().readTree(text);
        JsonSchema meta =
                SCHEMAS.getSchema(java.net.URI.create(node.get("$schema").asText()));
        assertEquals(Set.of(), faults(meta, text));
        assertTrue(node.get("examples").size() > 1);
        for (JsonNode example : node.get("examples")) {
            assertEquals(Set.of(), faults(schema(name), example.toString()));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 15})
    void whatIsPrintedKeepsToTheSchemas(int checkers) throws IOException {
        JsonSchema positions = schema(PositionJson.SCHEMA);
        JsonSchema plays = schema(PlayJson.SCHEMA);
        RandomWalk walk = new RandomWalk(checkers, 45);
        for (int i = 0; i < 100; i++) {
            Position position = walk.next();
            assertEquals(Set.of(), faults(positions, PositionJson.print(position)));
            for (Play play : Plays.legal(position, walk.roll())) {
                assertEquals(Set.of(), faults(plays, PlayJson.print(play)));
            }
        }
    }

    /** Single quotes stand for double ones. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '^',
            value = {
                "{}",
                "[]",
                "{'me':{'points':{'6':1}}}",
                "{'me':{'bar':1},'opponent':{'points':{}}}",
                "{'me':{'points':{'6':1}},'opponent':{'points':{}},'cube':2}",
                "{'me':{'points':{'0':1}},'opponent':{'points':{}}}",
                "{'me':{'points':{'25':1}},'opponent':{'points':{}}}",
                "{'me':{'points':{'6':16}},'opponent':{'points':{}}}",
                "{'me':{'points':{'6':0}},'opponent':{'points':{}}}",
                "{'me':{'points':{'6':'1'}},'opponent':{'points':{}}}",
                "{'me':{'points':{'6':1},'bar':-1},'opponent':{'points':{}}}",
                "{'checkers':16,'me':{'points':{'6':1}},'opponent':{'points':{}}}",
            })
    void schemaAndReaderRefuseTheSameForms(String text) throws IOException {
        String json = text.replace('\'', '"');
        assertFalse(faults(schema(PositionJson.SCHEMA), json).isEmpty(), json);
        assertThrows(InvalidPositionException.class, () -> PositionJson.parse(json));
    }
}
