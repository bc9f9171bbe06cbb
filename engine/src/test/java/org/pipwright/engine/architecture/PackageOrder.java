package org.pipwright.engine.architecture;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.pipwright.engine.PublicApi;

/** The packages of a module in order: each may know those before it and no others. Shared by all modules' tests. */
public final class PackageOrder {
    private final String root;
    private final List<String> order;
    private final JavaClasses classes;

    /**
     * An order.
     *
     * @param root the module's package
     * @param order names of the packages in it, lowest first; the empty name is the root itself
     */
    public PackageOrder(String root, String... order) {
        this.root = root;
        this.order = List.of(order);
        classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(location -> !location.contains("-tests.jar") && !location.contains("/jmh_generated/"))
                .importPackages(root);
    }

    public List<String> order() {
        return order;
    }

    public JavaClasses classes() {
        return classes;
    }

    private int place(JavaClass type) {
        String name = type.getPackageName();
        return name.equals(root) ? order.indexOf("") : order.indexOf(name.substring(root.length() + 1));
    }

    /** Packages that the order does not name, and those it names that are not there. */
    public Set<String> misnamed() {
        Set<String> found = new TreeSet<>();
        for (JavaClass type : classes) {
            String name = type.getPackageName();
            if (!type.getSimpleName().equals("package-info")) {
                found.add(name.equals(root) ? "" : name.substring(root.length() + 1));
            }
        }
        Set<String> both = new TreeSet<>(found);
        both.addAll(order);
        both.removeIf(name -> found.contains(name) && order.contains(name));
        return both;
    }

    /** Arrows from a package to one that stands after it, such as {@code roll -> play: Dice uses Play}. */
    public Set<String> wrongArrows() {
        Set<String> wrong = new TreeSet<>();
        for (JavaClass type : classes) {
            for (Dependency arrow : type.getDirectDependenciesFromSelf()) {
                JavaClass target = arrow.getTargetClass().getBaseComponentType();
                if (inRoot(target) && place(target) > place(type)) {
                    wrong.add(order.get(place(type)) + " -> " + order.get(place(target)) + ": " + type.getSimpleName()
                            + " uses " + target.getSimpleName());
                }
            }
        }
        return wrong;
    }

    private boolean inRoot(JavaClass type) {
        return type.getPackageName().equals(root) || type.getPackageName().startsWith(root + ".");
    }

    /** Fails if packages know each other in a circle. */
    public void requireNoCircles() {
        SlicesRuleDefinition.slices()
                .matching(root + ".(*)..")
                .should()
                .beFreeOfCycles()
                .allowEmptyShould(true)
                .check(classes);
    }

    /** Packages of engine from which the module uses types that are not marked as public. */
    public Set<String> internalsUsed() {
        String engine = PublicApi.class.getPackageName();
        return classes.stream()
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .map(arrow -> arrow.getTargetClass().getBaseComponentType())
                .filter(target -> target.getPackageName().startsWith(engine + ".") && !isPublicApi(target))
                .map(target -> target.getPackageName().substring(engine.length() + 1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Whether a type is marked, or lies in one that is. */
    public static boolean isPublicApi(JavaClass type) {
        return type.isAnnotatedWith(PublicApi.class)
                || type.getEnclosingClass().map(PackageOrder::isPublicApi).orElse(false);
    }
}
