# Whether the built program is behind its sources. To be sourced by bash scripts; defines functions only.

# Prints what stands against using build/app under $1: "not built", or the first source newer than it. Nothing: up to date.
outdated() {
    local root=$1 newer
    if [ ! -e "$root/build/app/built" ]; then
        printf 'not built\n'
        return
    fi
    # Folders count too: a deleted file shows there only.
    newer=$(find "$root"/{pom.xml,.mvn,tools,examples} "$root"/{core,vector,buildfile,workshop}/{pom.xml,src/main} \
        -newer "$root/build/app/built" -print -quit 2>/dev/null)
    [ -z "$newer" ] || printf '%s\n' "${newer#"$root"/}"
}
