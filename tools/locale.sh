# A locale in which Java can name every file. To be sourced by bash scripts; changes the environment.

# Without a UTF-8 locale Java reads ± in an argument or a file name as two question marks, and cannot open such a file.
case ${LC_ALL:-${LC_CTYPE:-${LANG:-}}} in
    *[Uu][Tt][Ff]8* | *[Uu][Tt][Ff]-8*) ;;
    *) export LC_ALL=C.UTF-8 ;;
esac
