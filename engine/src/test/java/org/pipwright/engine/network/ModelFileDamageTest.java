package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Damaged and forged model files: one line that says what is wrong, never anything else. */
class ModelFileDamageTest {
    private static final byte[] GOOD = ModelFile.toBytes(RandomNetworks.model(1));
    private static final int HEADER =
            (int) ByteBuffer.wrap(GOOD).order(ByteOrder.LITTLE_ENDIAN).getLong();
    private static final int DATA = 8 + HEADER;

    private static Model read(byte[] bytes) throws IOException {
        return ModelFile.read(new ByteArrayInputStream(bytes), "test");
    }

    /** Refused with one short line, which contains a part. */
    private static void requireRefused(String part, byte[] bytes) {
        String message =
                assertThrows(InvalidModelException.class, () -> read(bytes)).getMessage();
        requireOneLine(message);
        assertTrue(message.contains(part), message);
    }

    private static void requireOneLine(String message) {
        assertTrue(message.startsWith("model 'test': "), message);
        assertTrue(message.length() < 300 && message.chars().noneMatch(Character::isISOControl), message);
    }

    private static byte[] withLength(long length) {
        byte[] bytes = GOOD.clone();
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putLong(length);
        return bytes;
    }

    /** A file with another header before the same weights. */
    private static byte[] withHeader(UnaryOperator<String> change) {
        String old = new String(GOOD, 8, HEADER, StandardCharsets.UTF_8);
        String changed = change.apply(old);
        assertTrue(!changed.equals(old), "the test changes nothing");
        byte[] header = changed.getBytes(StandardCharsets.UTF_8);
        return ByteBuffer.allocate(8 + header.length + GOOD.length - DATA)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putLong(header.length)
                .put(header)
                .put(GOOD, DATA, GOOD.length - DATA)
                .array();
    }

    private static byte[] replacing(String part, String other) {
        return withHeader(header -> header.replace(part, other));
    }

    /** The same file with the checksum that belongs to its weights. */
    private static byte[] signed(byte[] bytes) throws NoSuchAlgorithmException {
        int headerLength =
                (int) ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).getLong();
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        digest.update(bytes, 8 + headerLength, bytes.length - 8 - headerLength);
        String header = new String(bytes, 8, headerLength, StandardCharsets.UTF_8);
        String sum = HexFormat.of().formatHex(digest.digest());
        String forged = header.replaceAll("\"sha256\":\"[0-9a-f]{64}\"", "\"sha256\":\"" + sum + "\"");
        System.arraycopy(forged.getBytes(StandardCharsets.UTF_8), 0, bytes, 8, headerLength);
        return bytes;
    }

    private static byte[] withWeight(float weight) throws NoSuchAlgorithmException {
        byte[] bytes = GOOD.clone();
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(DATA, weight);
        return signed(bytes);
    }

    @Test
    void theUndamagedFileIsFine() throws IOException, NoSuchAlgorithmException {
        assertEquals("contact 270-20-8-6, race 262-12-6", read(GOOD).shape());
        assertEquals(0.25f, read(withWeight(0.25f)).contact().layers().get(0).weights()[0]);
    }

    @Test
    void cutOffAnywhere() {
        for (int length = 0; length < GOOD.length; length += length < DATA + 16 ? 1 : 997) {
            requireRefused("", Arrays.copyOf(GOOD, length));
        }
        requireRefused("cut off or added to", Arrays.copyOf(GOOD, GOOD.length - 1));
        requireRefused("cut off or added to", Arrays.copyOf(GOOD, GOOD.length + 1));
        requireRefused("cut off", Arrays.copyOf(GOOD, DATA - 1));
        requireRefused("cut off", Arrays.copyOf(GOOD, 7));
    }

    @ParameterizedTest
    @ValueSource(longs = {-1, Long.MIN_VALUE, Long.MAX_VALUE, 1L << 31, (1L << 31) - 1, 1L << 32, 0, 1, 1 << 20})
    void headerLengthThatCannotBe(long length) {
        requireRefused("its header claims " + Long.toUnsignedString(length) + " bytes", withLength(length));
    }

    @ParameterizedTest
    @ValueSource(ints = {-9, -8, -1, 1, 8})
    void headerLengthThatIsOff(int by) {
        requireRefused("", withLength(HEADER + by));
    }

    @ParameterizedTest
    @ValueSource(floats = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY})
    void weightsThatAreNotFinite(float weight) throws NoSuchAlgorithmException {
        requireRefused("a weight is " + weight, withWeight(weight));
    }

    @Test
    void weightsThatAreNotThoseOfTheChecksum() {
        byte[] bytes = GOOD.clone();
        bytes[bytes.length - 1] ^= 1;
        requireRefused("its weights are damaged", bytes);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"format\":\"pipwright-model\"  | \"format\":\"another\"      | is not a Pipwright model",
                "\"format\":\"pipwright-model\"  | \"form\":\"pipwright-model\" | its format is missing",
                "\"format_version\":\"1\"        | \"format_version\":\"3\"    | needs another version",
                "\"features.contact\":\"contact-1\" | \"features.contact\":\"contact-9\" | feature set 'contact-9'",
                "\"features.contact\":\"contact-1\" | \"features.contact\":\"race-1\" | 270 inputs where 262",
                "\"features.race\":\"race-1\"    | \"features.rice\":\"race-1\" | feature set 'null'",
                "\"F32\"                         | \"F64\"                     | is of type F64, not F32 or F16",
                "\"F32\"                         | \"F16\"                     | does not fit its bytes",
                "\"F32\"                         | null                        | is of type null, not F32",
                "\"F32\"                         | \"a\\nb\"                   | is of type a b, not F32",
                "[20,270]                        | [270,20]                    | 20 inputs and 270 outputs has 5400 weights",
                "[20,270]                        | [20,271]                    | does not fit its bytes",
                "[20,270]                        | [5400]                      | with 2 dimensions is missing",
                "[20,270]                        | [20,270,1]                  | with 2 dimensions is missing",
                "[20,270]                        | [-20,-270]                  | not that of a safetensors file",
                "[20,270]                        | [0,270]                     | not that of a safetensors file",
                "[20,270]                        | [65537,270]                 | not that of a safetensors file",
                "[20,270]                        | [60000,60000]               | not that of a safetensors file",
                "[20,270]                        | [2e1,270]                   | not that of a safetensors file",
                "[20,270]                        | [1,1,1,1,1,1,1,20,270]      | not that of a safetensors file",
                "[20,270]                        | {\"a\":1}                   | not that of a safetensors file",
                "[20,270]                        | [99999999999999999999,270]  | not that of a safetensors file",
                "[0,21600]                       | [0,21600,21600]             | not that of a safetensors file",
                "[0,21600]                       | [21600,0]                   | does not fit its bytes",
                "[0,21600]                       | [4,21604]                   | do not lie end to end",
                "[0,21600]                       | [21600,43200]               | do not lie end to end",
                "\"contact.0.bias\"              | \"contact.0.bios\"          | contact.0.bias with 1 dimensions",
                "\"race.1.bias\"                 | \"race.2.bias\"             | race.1.bias with 1 dimensions",
                "\"contact.0.weight\"            | \"contact.00.weight\"       | at least two layers, not 0",
                "\"contact.2.weight\"            | \"contact.3.weight\"        | gives 8 outputs",
                "\"dtype\"                       | \"kind\"                    | not that of a safetensors file",
                "\"contact.0.bias\"              | \"contact.1.bias\"          | its header is not readable",
                "\"run\":\"test\"                | \"run\":\"a\",\"run\":\"b\" | its header is not readable",
                "\"run\":\"test\"                | \"run\":5                   | not that of a safetensors file",
                "\"run\":\"test\"                | \"run\":\"te                | its header is not readable",
                "__metadata__                    | __metadata                  | not that of a safetensors file"
            })
    void forgedHeaders(String part, String other, String message) {
        requireRefused(message, replacing(part, other));
    }

    @Test
    void headersThatAreNone() {
        requireRefused("not that of a safetensors file", withHeader(header -> "[]"));
        requireRefused("not that of a safetensors file", withHeader(header -> header.strip() + "{}"));
        requireRefused("not readable", withHeader(header -> header.strip() + "}"));
        requireRefused("its header is not", withHeader(header -> "[".repeat(100_000)));
        requireRefused("its header is not", withHeader(header -> "\u0000".repeat(100)));
        requireRefused("its format is missing", withHeader(header -> "{}"));
    }

    @Test
    void tensorsBesideTheLayers() throws NoSuchAlgorithmException {
        int size = GOOD.length - DATA;
        String more = "{\"more\":{\"dtype\":\"F32\",\"shape\":[1],\"data_offsets\":[" + size + "," + (size + 4) + "]},";
        byte[] bytes = withHeader(header -> header.replaceFirst("\\{", more));
        requireRefused("tensors beside its layers", signed(Arrays.copyOf(bytes, bytes.length + 4)));
    }

    /** Every byte of the header and some of the weights, one bit each: refused, or in the notes, where no one can tell. */
    @Test
    void flippedBits() throws IOException {
        SplittableRandom random = new SplittableRandom(17);
        Model good = read(GOOD);
        int accepted = 0;
        for (int i = 0; i < GOOD.length; i += i < DATA + 16 ? 1 : 23) {
            byte[] bytes = GOOD.clone();
            bytes[i] ^= 1 << random.nextInt(8);
            accepted += requireRefusedOrSame(good, bytes) ? 1 : 0;
        }
        assertTrue(accepted < 40, accepted + " files with a wrong bit were accepted: the one note is shorter");
    }

    @Test
    void manyRandomBytes() throws IOException {
        SplittableRandom random = new SplittableRandom(18);
        Model good = read(GOOD);
        for (int trial = 0; trial < 2000; trial++) {
            byte[] bytes = GOOD.clone();
            for (int n = random.nextInt(1, 30); n > 0; n--) {
                // Mostly in the header, where a byte means more.
                int limit = random.nextInt(4) == 0 ? bytes.length : DATA;
                bytes[random.nextInt(limit)] = (byte) random.nextInt(256);
            }
            requireRefusedOrSame(good, bytes);
        }
    }

    /** Whether it was accepted; then it must have the same weights. */
    private static boolean requireRefusedOrSame(Model good, byte[] bytes) throws IOException {
        Model found;
        try {
            found = read(bytes);
        } catch (InvalidModelException e) {
            requireOneLine(e.getMessage());
            return false;
        } catch (RuntimeException e) {
            return fail("not said in one line", e);
        }
        assertEquals(good.shape(), found.shape());
        assertArrayEquals(
                good.contact().layers().get(0).weights(),
                found.contact().layers().get(0).weights());
        return true;
    }
}
