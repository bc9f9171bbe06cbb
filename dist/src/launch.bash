# Finds Java and starts Pipwright: read by the script of a checkout, for which kit is 'a JDK', and by that of an unpacked
# archive, for which it is 'Java'; no program by itself. Written for bash 3.2 (macOS) and newer. Uses no program on the fast path.
# shellcheck shell=bash disable=SC2154

die() {
    printf 'pipwright: %s\n' "$1" >&2
    exit "${2:-2}"
}

# Refuses a folder that cannot be in a class path.
check_home() {
    case $home in
        *:*) die "Pipwright lies in '$home', and a path with ':' cannot be in Java's class path: move it to another folder" ;;
    esac
}

# ---- Java -----------------------------------------------------------------------------------

# Sets java, java_version as in '17.0.15' and modules, the names of those it has, if it says.
find_java() {
    local line path
    if [ -n "${JAVA_HOME:-}" ]; then
        java=$JAVA_HOME/bin/java
        [ -x "$java" ] || die "JAVA_HOME is '$JAVA_HOME', which has no bin/java: set it to $kit 17 or newer"
    else
        java=$(command -v java) || die "no java found: install $kit 17 or newer, or set JAVA_HOME to one"
    fi
    java_version=
    modules=
    path=$java
    [ -n "${JAVA_HOME:-}" ] || path=$(readlink -f "$java" 2>/dev/null) || path=$java
    # Every JDK says its version in a file; asking java itself would take longer than all the rest here.
    if [ -r "${path%/bin/java}/release" ]; then
        while read -r line; do
            case $line in
                JAVA_VERSION=*) java_version=${line#JAVA_VERSION=} ;;
                MODULES=*) modules=${line#MODULES=} ;;
            esac
        done <"${path%/bin/java}/release"
        java_version=${java_version//[\"$'\r']/}
    fi
    if [ -z "$java_version" ]; then
        line=$("$java" -version 2>&1) || die "'$java' does not run: install $kit 17 or newer, or set JAVA_HOME to one"
        line=${line#*version \"}
        java_version=${line%%\"*}
    fi
    case ${java_version%%[.+-]*} in
        [2-9][0-9] | 1[7-9]) ;;
        *) die "'$java' is Java $java_version, and Pipwright needs 17 or newer: set JAVA_HOME to a newer one" ;;
    esac
}

# How short commands start; sets short_flags.
find_flags() {
    local pages
    short_flags=(-XX:+UseSerialGC -Xshare:auto -Xlog:disable -Xlog:all=error:stderr)
    # Where the kernel has large pages to give, a net of 10 MB is not spread over thousands of small ones, which would take a
    # quarter of the start. Elsewhere, and on systems that have no such file, the JVM need not know.
    pages=never
    [ -r /sys/kernel/mm/transparent_hugepage/enabled ] && read -r pages </sys/kernel/mm/transparent_hugepage/enabled
    case $pages in
        *'[always]'* | *'[madvise]'*) short_flags+=(-XX:+UseTransparentHugePages) ;;
    esac
}

# ---- Archive of classes ---------------------------------------------------------------------

# Holds the lock of the folder work until this process or the subshell it runs in ends.
lock() {
    local holder
    if command -v flock >/dev/null 2>&1; then
        exec 9>"$work/lock"
        flock 9
        return
    fi
    while ! mkdir "$work/lock.d" 2>/dev/null; do
        holder=
        [ -r "$work/lock.d/pid" ] && read -r holder <"$work/lock.d/pid"
        if [ -n "$holder" ] && ! kill -0 "$holder" 2>/dev/null; then
            rm -rf "$work/lock.d"
        else
            sleep 0.5
        fi
    done
    echo $$ >"$work/lock.d/pid"
    trap 'rm -rf "$work/lock.d"' EXIT
}

# Names the archive of classes in a folder for the command that follows it: one for short commands, one with vectors for
# long ones, and one for the desk, for a server is three times as many classes. Training has none: it may have a class path of
# its own, and takes hours.
name_archive() {
    archive=$1
    shift
    find_span "$@"
    case ${1:-}-$span in
        desk-*) archive=$archive/desk-$java_version.jsa ;;
        train-*) archive= ;;
        *-long) archive=$archive/vectors-$java_version.jsa ;;
        *) archive=$archive/classes-$java_version.jsa ;;
    esac
}

# Makes the archive of classes if there is to be one and is none yet.
ensure_archive() {
    [ -z "$archive" ] || [ -e "$archive" ] && return
    (
        lock
        [ -e "$archive" ] || make_archive
    )
}

# Commands load their classes from an archive, which halves the start of short ones and of the desk. It is the static kind:
# the dynamic kind leaves out all of picocli, whose classes are in a format too old for it. What it is to hold is what a
# first question loads, or a desk that shows its pages to itself and ends.
make_archive() {
    local kept
    module_flags=()
    case ${archive##*/} in
        desk-* | vectors-*) find_modules ;;
    esac
    case ${archive##*/} in
        desk-*)
            kept=$archive.kept
            "$java" -XX:DumpLoadedClassList="$archive.list" -Dpipwright.desk.rehearsal=true "${module_flags[@]}" \
                -cp "$classpath" org.pipwright.cli.Main desk --no-browser --records "$kept" >/dev/null 2>&1 9>&-
            rm -rf "$kept"
            ;;
        vectors-*)
            "$java" -XX:DumpLoadedClassList="$archive.list" "${short_flags[@]}" "${module_flags[@]}" \
                -cp "$classpath" org.pipwright.cli.Main rank start --roll 3-1 --lookahead 1 --explain >/dev/null 2>&1 9>&-
            ;;
        *)
            list_loaded rank start --roll 3-1 --lookahead 1 --explain
            list_loaded rank '2@5 2@6 1@7 2@8 1@10 3@13 2@20 1@22 1@23 / 4@6 2@7 2@8 1@9 3@13 1@21 2@24' --roll 6-4 --explain
            list_loaded rank '3@3 2@5 3@6 3@8 2@9 2@11 / 4@4 4@5 3@7 2@8 2@10' --roll 4-2 --explain
            list_loaded cube 1@1/1@2 --away 3,2
            # Both lists number their classes from 0, which newer JVMs refuse; names are enough.
            sed -i.all '/^@/!s/ id: [0-9]*$//' "$archive.list"
            ;;
    esac
    # Java 17 crashes over lambdas that are of an interface it keeps in no archive, such as picocli's, which are in an old format.
    [ ! -e "$archive.list" ] || sed -i.all '/^@lambda-proxy.*picocli/d' "$archive.list"
    dump_archive
    if [ ! -s "$archive.new" ] && [ -e "$archive.list" ]; then
        # Should it crash over others, then without any it starts nearly as quickly.
        sed -i.all '/^@lambda-proxy/d' "$archive.list"
        dump_archive
    fi
    # An empty file says that this Java cannot make one; nobody should wait for a second try.
    [ -s "$archive.new" ] || : >"$archive.new"
    rm -f "$archive.list" "$archive.list.all" "$archive.part"
    mv -f "$archive.new" "$archive"
}

# Adds the classes that a command loads to the list.
list_loaded() {
    "$java" -XX:DumpLoadedClassList="$archive.part" "${short_flags[@]}" -cp "$classpath" org.pipwright.cli.Main "$@" \
        >/dev/null 2>&1 9>&-
    cat "$archive.part" >>"$archive.list"
}

# Quiet even if Java crashes.
dump_archive() {
    { "$java" ${module_flags[@]+"${module_flags[@]}"} -XX:ErrorFile=/dev/null -Xshare:dump -XX:SharedClassListFile="$archive.list" \
        -XX:SharedArchiveFile="$archive.new" -cp "$classpath" >/dev/null 2>&1 9>&-; } 2>/dev/null
}

# ---- Run ------------------------------------------------------------------------------------

# Whether this Java has vectors: a runtime may have been cut down, and without them everything works, slower.
has_vectors() {
    case $modules in
        '' | *jdk.incubator.vector*) ;;
        *) return 1 ;;
    esac
}

# What long commands need of Java's modules; sets module_flags. An archive of classes can only be used with those that it was
# made with.
find_modules() {
    module_flags=(--add-opens java.base/java.io=ALL-UNNAMED)
    # Newer JVMs warn about libraries that use native code or Unsafe, as ND4J does.
    case ${java_version%%[.+-]*} in
        1[7-9] | 2[0-3]) ;;
        *) module_flags+=(--enable-native-access=ALL-UNNAMED --sun-misc-unsafe-memory-access=allow) ;;
    esac
    ! has_vectors || module_flags+=(--add-modules jdk.incubator.vector)
}

# How long a command computes; sets span to short, some (longer than C1 is good for, and over before C2 has compiled vector
# code), or long.
find_span() {
    local word before= ahead= all=
    span=short
    case ${1:-} in
        train | duel | standings | rollout | review | drill | desk | tables)
            span=long
            return
            ;;
    esac
    for word in "$@"; do
        case $before$word in
            --lookahead2 | --lookahead=2) ahead=2 ;;
            --lookahead[01] | --lookahead=[01] | --lookahead | --explain) [ $span = long ] || span=some ;;
            all | --roll=all) all=21 ;;
            --batch | --batch=* | --lookahead* | --seconds | --seconds=* | --rollout | --rollout=* | --cluster | --cluster=*)
                span=long
                ;;
        esac
        before=
        [ "$word" != --lookahead ] || before=$word
    done
    # Two rolls ahead take a moment for one roll, but not for all 21.
    case $span-$ahead$all in
        long-* | *-) ;;
        *-221) span=long ;;
        *) span=some ;;
    esac
}

# Commands that answer one question and end.
is_single() {
    local word
    case ${1:-} in
        rank | odds | cube) ;;
        *) return 1 ;;
    esac
    for word in "$@"; do
        case $word in
            --batch | --batch=* | --rollout | --rollout=*) return 1 ;;
        esac
    done
}

# Starts Java with the classes in classpath, the flags in common_flags and the archive of classes, if there is one.
launch() {
    local name
    [ -t 2 ] && common_flags+=(-Dpipwright.terminal=true)
    if [ -t 1 ]; then
        # A subshell that ends makes bash look up the terminal's width.
        shopt -s checkwinsize
        (:)
        common_flags+=(-Dpipwright.terminal.out=true "-Dpipwright.columns=${COLUMNS:-0}")
    fi

    find_span "$@"
    [ -z "$archive" ] || [ ! -s "$archive" ] || common_flags+=("-XX:SharedArchiveFile=$archive")
    if [ $span = long ]; then
        # A single question leaves little to collect: threads for that would take as long as a part of the answer.
        is_single "$@" && common_flags+=(-XX:+UseSerialGC)
        # Up sooner than with the usual collector, and for pages as good.
        [ "$1" != desk ] || common_flags+=(-XX:+UseParallelGC)
        # One thread for each of ND4J's calls: training runs several of its own.
        [ "$1" != train ] || export OMP_NUM_THREADS=${OMP_NUM_THREADS:-1}
        find_modules
        common_flags+=("${module_flags[@]}")
        # Until it is compiled, vector code is a hundred times slower, so it need not prove first that it is run often. What
        # runs for hours gets time for the best code.
        case $1 in
            train | duel | standings | tables) ;;
            *)
                common_flags+=(-XX:CompileCommand=quiet
                    '-XX:CompileCommand=CompileThresholdScaling,org.pipwright.engine.network.Vector*::*,0.2')
                ;;
        esac
        # The JVM announces the incubating vector module on standard error, which nobody needs to see.
        # Everything that Pipwright itself says goes round the filter, through descriptor 3.
        # shellcheck disable=SC2086
        exec "$java" ${common_flags[@]+"${common_flags[@]}"} \
            -XX:MaxRAMPercentage=50 -Xshare:auto -Xlog:disable -Xlog:all=error:stderr -Dorg.bytedeco.javacpp.maxPhysicalBytes=0 \
            -Dorg.deeplearning4j.crash.reporting.enabled=false -Dpipwright.stderr.fd=3 \
            ${PIPWRIGHT_JAVA_OPTIONS:-} -cp "$classpath" org.pipwright.cli.Main "$@" \
            3>&2 2> >(trap '' INT TERM HUP && exec grep --line-buffered -v '^WARNING: Using incubator modules' >&2 3>&-)
    fi
    # The first compiler alone is enough for a moment. What takes longer leaves no more to collect if it has room, and little
    # of it runs often enough to be worth the second compiler's time: the products of layers, which come to it as soon as usual.
    # Code that waits for it does so without being counted, and what it has compiled is called, not compiled anew in each caller.
    if [ $span = some ]; then
        short_flags+=(-XX:NewSize=300m -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000
            -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000 -XX:Tier3DelayOn=0
            -XX:InlineSmallCode=500 -XX:CompileCommand=quiet)
        for name in 'Plain*' Kernel ActiveInputs; do
            short_flags+=("-XX:CompileCommand=CompileThresholdScaling,org.pipwright.engine.network.$name::*,0.1")
        done
        # For a net's checksum the second compiler knows an instruction of the processor.
        short_flags+=('-XX:CompileCommand=CompileThresholdScaling,sun.security.provider.DigestBase::*,0.001')
    else
        short_flags+=(-XX:TieredStopAtLevel=1)
    fi
    # shellcheck disable=SC2086
    exec "$java" "${short_flags[@]}" ${common_flags[@]+"${common_flags[@]}"} ${PIPWRIGHT_JAVA_OPTIONS:-} \
        -cp "$classpath" org.pipwright.cli.Main "$@"
}
