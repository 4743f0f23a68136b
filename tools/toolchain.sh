# Finds a JDK (17 or newer), Maven, and Chromium for the tests. To be sourced by bash scripts; defines functions only.

MINIMUM_JAVA=17

# Feature version (17, 25) of the Java under $1, from its "release" file where there is one: that costs no start of a
# virtual machine.
java_feature() {
    local version=""
    if [ -r "$1/release" ]; then
        version=$(sed -n 's/^JAVA_VERSION="\(.*\)"/\1/p' "$1/release")
    fi
    if [ -z "$version" ]; then
        version=$("$1/bin/java" -version 2>&1 | sed -n 's/.*version "\([^"]*\)".*/\1/p' | head -n 1)
    fi
    version=${version#1.}
    printf '%s\n' "${version%%[!0-9]*}"
}

# Prints the home of the first Java new enough that has the tool $1 (java, javac): JAVA_HOME, then PATH, then /usr/lib/jvm.
find_java_home() {
    local tool=$1 home on_path feature
    on_path=$(command -v "$tool" 2>/dev/null) && on_path=$(readlink -f "$on_path") && on_path=${on_path%/bin/*}
    for home in "${JAVA_HOME:-}" "$on_path" /usr/lib/jvm/*; do
        [ -n "$home" ] && [ -x "$home/bin/$tool" ] || continue
        feature=$(java_feature "$home")
        if [ -n "$feature" ] && [ "$feature" -ge "$MINIMUM_JAVA" ]; then
            printf '%s\n' "$home"
            return 0
        fi
    done
    return 1
}

# Makes sure of a JDK and Maven and exports JAVA_HOME. Where something is missing: installs it if this is Debian and we
# have the right, otherwise says the one line that mends it.
require_toolchain() {
    local missing=""
    find_java_home javac >/dev/null || missing="openjdk-$MINIMUM_JAVA-jdk-headless"
    command -v mvn >/dev/null 2>&1 || missing="${missing:+$missing }maven"
    if [ -n "$missing" ]; then
        if [ "$(id -u)" = 0 ] && [ -r /etc/debian_version ] && command -v apt-get >/dev/null 2>&1; then
            echo "longthrow: installing $missing" >&2
            # shellcheck disable=SC2086 # one word each
            { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq $missing; } >&2 || {
                echo "longthrow: could not install $missing; mend it with: apt-get install -y $missing" >&2
                return 1
            }
        else
            echo "longthrow: missing: $missing (JDK $MINIMUM_JAVA or newer, Maven). On Debian, as root:" >&2
            echo "    apt-get install -y $missing" >&2
            return 1
        fi
    fi
    JAVA_HOME=$(find_java_home javac) || {
        echo "longthrow: no JDK $MINIMUM_JAVA or newer found in JAVA_HOME, PATH or /usr/lib/jvm" >&2
        return 1
    }
    export JAVA_HOME
}

# Makes sure of a browser for the tests of the pages, which are skipped without one: installs the distribution's Chromium where
# this is Debian and we have the right. Fails, and says the line that mends it, where there is none in the end.
require_chromium() {
    command -v chromium >/dev/null 2>&1 || command -v chromium-browser >/dev/null 2>&1 || {
        if [ "$(id -u)" = 0 ] && [ -r /etc/debian_version ] && command -v apt-get >/dev/null 2>&1; then
            echo "longthrow: installing chromium, for the tests of the pages" >&2
            { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium; } >&2 \
                && command -v chromium >/dev/null 2>&1 && return 0
        fi
        echo "longthrow: no chromium on PATH. On Debian, as root: apt-get install -y chromium" >&2
        return 1
    }
}
