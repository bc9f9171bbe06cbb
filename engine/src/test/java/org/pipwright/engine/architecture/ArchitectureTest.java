package org.pipwright.engine.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The order of engine's packages, and what users of the library may rely on. */
class ArchitectureTest {
    private static final int MAX_PUBLIC = 60;

    private static final PackageOrder ENGINE = new PackageOrder(
            "org.pipwright.engine",
            "",
            "text",
            "files",
            "parallel",
            "statistics",
            "position",
            "roll",
            "play",
            "rules",
            "evaluation",
            "features",
            "network",
            "bearoff",
            "score",
            "cube",
            "matchtable",
            "measures",
            "match",
            "ranking",
            "search",
            "cubeplay",
            "rollout",
            "duel",
            "judge",
            "record",
            "explain",
            "review",
            "drill",
            "standings",
            "reduced");

    @Test
    void everyPackageHasItsPlace() {
        assertEquals(Set.of(), ENGINE.misnamed());
    }

    @Test
    void packagesKnowOnlyThoseBeforeThem() {
        assertEquals(Set.of(), ENGINE.wrongArrows());
    }

    @Test
    void thereAreNoCircles() {
        ENGINE.requireNoCircles();
    }

    /** The rows of the table of engine's packages, in its order. */
    @Test
    void theContributorsMapIsThisOrder() throws IOException {
        String text = Files.readString(Path.of("..", "DEVELOPERS.md"));
        int from = text.indexOf("| package | what it holds |");
        Matcher rows = Pattern.compile("\\| `(\\w+)` \\|").matcher(text.substring(from, text.indexOf("\n\n", from)));
        List<String> map = rows.results().map(row -> row.group(1)).collect(Collectors.toList());
        assertEquals(ENGINE.order().subList(1, ENGINE.order().size()), map);
    }

    /** What the door gives to Pipwright's own modules, which users have no need of. */
    private static final Set<String> FOR_OUR_MODULES =
            Set.of("Knowledge.judgement", "Knowledge.portable", "Knowledge.terms");

    private static Set<JavaClass> marked() {
        return ENGINE.classes().stream()
                .filter(type -> type.isAnnotatedWith("org.pipwright.engine.PublicApi"))
                .collect(Collectors.toSet());
    }

    @Test
    void thePublicFaceIsSmallAndHasTheJudgeAtItsHead() {
        Set<String> names = marked().stream().map(JavaClass::getName).collect(Collectors.toCollection(TreeSet::new));
        assertTrue(names.contains("org.pipwright.engine.judge.Judge"), names.toString());
        assertTrue(names.size() <= MAX_PUBLIC, names.size() + " types: " + names);
        assertEquals(
                Set.of(),
                marked().stream()
                        .filter(type -> !type.getModifiers().contains(JavaModifier.PUBLIC))
                        .collect(Collectors.toSet()));
    }

    /** What a judge is asked and answers with can be named without internal types. */
    @Test
    void whatTheDoorMentionsIsPublicToo() {
        Set<String> internal = new TreeSet<>();
        for (JavaClass type : marked()) {
            if (!type.getPackageName().endsWith(".judge")) {
                continue;
            }
            for (JavaMember member : type.getMembers()) {
                String name = type.getSimpleName() + "." + member.getName();
                if (member.getModifiers().contains(JavaModifier.PUBLIC) && !FOR_OUR_MODULES.contains(name)) {
                    member.getAllInvolvedRawTypes().stream()
                            .map(JavaClass::getBaseComponentType)
                            .filter(used -> used.getPackageName().startsWith("org.pipwright"))
                            .filter(used -> !PackageOrder.isPublicApi(used))
                            .forEach(used -> internal.add(name + ": " + used.getName()));
                }
            }
        }
        assertEquals(Set.of(), internal);
    }

    @Test
    void jarsAreThoseOfTheList() throws IOException {
        assertEquals(List.of(), Dependencies.faults());
    }
}
