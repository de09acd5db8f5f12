#include "cli/completion.h"

#include "cli/manual.h"
#include "cli/verb.h"
#include "desk/desk.h"
#include "desk/reckon.h"

#include "base/text.h"

#include <map>

namespace undersheet::cli {
namespace {

int run_completion(const Arguments& arguments, Screen& screen) {
    const std::string shell = arguments.one("SHELL");
    if (shell == "bash")
        screen.bytes(bash_completion());
    else if (shell == "zsh")
        screen.bytes(zsh_completion());
    else if (shell == "fish")
        screen.bytes(fish_completion());
    else if (shell == "man")
        screen.bytes(manual_page());
    else
        return screen.refuse({Code::argument_wrong,
                              "there is no completion for '" + shell + "'",
                              {},
                              "there are bash, zsh, fish, and man for the manual page"});
    return 0;
}

std::string list_of(const std::vector<std::string>& words) { return joined(words, " "); }

std::vector<std::string> first_words() {
    std::vector<std::string> words;
    for (const Verb& verb : verbs()) {
        if (verb.name.find(' ') == std::string::npos) words.push_back(verb.name);
    }
    return words;
}

// The second words of a command that has them: "add clear look join" of punch.
std::map<std::string, std::vector<std::string>> second_words() {
    std::map<std::string, std::vector<std::string>> seconds;
    for (const Verb& verb : verbs()) {
        const auto pieces = split(verb.name, ' ');
        if (pieces.size() == 2) seconds[pieces[0]].push_back(pieces[1]);
    }
    return seconds;
}

std::vector<std::string> option_names(const Verb& verb) {
    std::vector<std::string> names = {"--help"};
    for (const Option& option : verb.options) names.push_back(option.name);
    return names;
}

std::vector<std::string> kind_names() {
    std::vector<std::string> names;
    for (const auto& kind : desk::kinds()) {
        if (kind.typed && kind.group == "reading") names.push_back(kind.name);
    }
    return names;
}

std::vector<std::string> topic_names() {
    std::vector<std::string> names;
    for (const auto& line : desk::topics()) names.push_back(line.topic);
    return names;
}

std::vector<std::string> field_names(const desk::KindLine& kind) {
    std::vector<std::string> names;
    for (const auto& field : kind.fields) names.push_back(field.name + "=");
    return names;
}

std::vector<std::string> field_choices(const desk::FieldLine& field) {
    std::vector<std::string> words;
    for (const auto& choice : field.choices) words.push_back(choice.word);
    if (field.type == "yes or no") words = {"yes", "no"};
    return words;
}

// "air) echo 'air_c= rh_pct=';;": what each word of a shell's case leads to.
std::string cases(const std::map<std::string, std::vector<std::string>>& lists) {
    std::string out;
    for (const auto& [word, names] : lists) out += "    " + word + ") echo '" + list_of(names) + "';;\n";
    return out;
}

std::map<std::string, std::vector<std::string>> fields_by_kind() {
    std::map<std::string, std::vector<std::string>> fields;
    for (const auto& kind : desk::kinds()) {
        if (kind.typed && kind.group != "office") fields[kind.name] = field_names(kind);
    }
    return fields;
}

std::map<std::string, std::vector<std::string>> choices_by_field() {
    std::map<std::string, std::vector<std::string>> choices;
    for (const auto& kind : desk::kinds()) {
        for (const auto& field : kind.fields) {
            if (const auto words = field_choices(field); !words.empty())
                choices[kind.name + "." + field.name] = words;
        }
    }
    return choices;
}

std::map<std::string, std::vector<std::string>> options_by_verb() {
    std::map<std::string, std::vector<std::string>> options;
    for (const Verb& verb : verbs()) options["'" + verb.name + "'"] = option_names(verb);
    return options;
}

std::map<std::string, std::vector<std::string>> steps_by_stage() {
    std::map<std::string, std::vector<std::string>> steps;
    for (const auto& stage : desk::stage_names()) steps[stage] = desk::step_names(stage);
    return steps;
}

// The lists, as functions that bash and zsh both read.
std::string shared_lists() {
    std::string out = "_undersheet_seconds() {\n  case $1 in\n" + cases(second_words()) + "  esac\n}\n";
    out += "_undersheet_options() {\n  case $1 in\n" + cases(options_by_verb()) + "  esac\n}\n";
    out += "_undersheet_fields() {\n  case $1 in\n" + cases(fields_by_kind()) + "  esac\n}\n";
    out += "_undersheet_choices() {\n  case $1 in\n" + cases(choices_by_field()) + "  esac\n}\n";
    out += "_undersheet_steps() {\n  case $1 in\n" + cases(steps_by_stage()) + "  esac\n}\n";
    out += "_undersheet_kinds='" + list_of(kind_names()) + "'\n";
    out += "_undersheet_verbs='" + list_of(first_words()) + "'\n";
    out += "_undersheet_stages='" + list_of(desk::stage_names()) + "'\n";
    out += "_undersheet_topics='" + list_of(topic_names()) + "'\n";
    out += "_undersheet_papers='" + list_of(desk::paper_names()) + "'\n";
    return out;
}

// Which words may stand here, given the words before and the one begun. Prints them; the shells pick.
constexpr const char* kCandidates =
    R"sh(# _undersheet_candidates WORD... : what may stand in the last WORD's place
_undersheet_candidates() {
  local verb=$1 current=${!#} kind field seconds
  [ $# -le 1 ] && { echo "$_undersheet_verbs --help --version"; return; }
  seconds=$(_undersheet_seconds "$verb")
  if [ -n "$seconds" ] && [ $# -eq 2 ]; then echo "$seconds $(_undersheet_options "$verb")"; return; fi
  [ -n "$seconds" ] && case " $seconds " in *" $2 "*) verb="$1 $2";; esac
  case $current in -*) _undersheet_options "$verb"; return;; esac
  case $verb in
    record|kinds) kind=$2; [ $# -eq 2 ] && { echo "$_undersheet_kinds"; return; };;
    paper) [ $# -eq 2 ] && echo "$_undersheet_papers"; return;;
    reckon) [ $# -eq 2 ] && echo "$_undersheet_topics"; return;;
    completion) echo "bash zsh fish man"; return;;
    why) echo "$_undersheet_stages"; return;;
    begin|tick|pause|resume|sign|confirm|reopen|send-back|leave-out|take-back)
      kind=${verb//-/_}
      [ $# -eq 2 ] && { echo "$_undersheet_stages"; return; }
      [ "$verb" = tick ] && [ $# -eq 3 ] && { _undersheet_steps "${2%%/*}"; return; };;
    *) return;;
  esac
  case $current in
    *=*) field=${current%%=*}
         local word; for word in $(_undersheet_choices "$kind.$field"); do echo "$field=$word"; done;;
    *) _undersheet_fields "$kind";;
  esac
}
)sh";

constexpr const char* kBash = R"sh(_undersheet() {
  local line=${COMP_LINE:0:COMP_POINT} words
  read -ra words <<< "$line"
  [ "${line: -1}" = " " ] && words+=("")
  local current=${words[${#words[@]}-1]} found
  found=$(compgen -W "$(_undersheet_candidates "${words[@]:1}")" -- "$current")
  # readline splits at '=', so it wants only what stands behind it
  case $current in *=*) found=${found//"${current%%=*}="/};; esac
  COMPREPLY=($found)
  case "${COMPREPLY[*]}" in *=) compopt -o nospace 2>/dev/null;; esac
}
complete -o default -F _undersheet undersheet
)sh";

constexpr const char* kZsh = R"sh(_undersheet() {
  local -a found
  found=(${=$(_undersheet_candidates "${(@)words[2,CURRENT]}")})
  compadd -S '' -- ${(M)found:#*=}
  compadd -- ${found:#*=}
  (( $#found )) || _files
}
compdef _undersheet undersheet
)sh";

std::string fish_line(const std::string& condition, const std::vector<std::string>& words,
                      const std::string& says = {}) {
    std::string line = "complete -c undersheet -n '" + condition + "' -a '" + list_of(words) + "'";
    if (!says.empty()) line += " -d '" + replaced(says, "'", "\\'") + "'";
    return line + "\n";
}

std::string seen(const std::string& word) { return "__fish_seen_subcommand_from " + word; }

std::string fish_options(const Verb& verb) {
    const auto pieces = split(verb.name, ' ');
    const std::string condition =
        pieces.size() == 2 ? seen(pieces[0]) + "; and " + seen(pieces[1]) : seen(pieces[0]);
    std::string out;
    for (const Option& option : verb.options) {
        if (!option.name.starts_with("--")) continue;
        out += "complete -c undersheet -n '" + condition + "' -l " + option.name.substr(2) +
               (option.value.empty() ? "" : " -r") + " -d '" + replaced(option.says, "'", "\\'") + "'\n";
    }
    return out;
}

} // namespace

std::string bash_completion() {
    return "# completion of undersheet for bash: source this file\n" + shared_lists() + kCandidates + kBash;
}

std::string zsh_completion() {
    // ${!#} is bash's; zsh calls the last word $@[-1].
    return "#compdef undersheet\n# completion of undersheet for zsh: source this file, or put it in fpath as "
           "_undersheet\n" +
           shared_lists() + replaced(kCandidates, "${!#}", "${@[-1]}") + kZsh;
}

std::string fish_completion() {
    std::string out = "# completion of undersheet for fish: put it in ~/.config/fish/completions\ncomplete "
                      "-c undersheet -f\n";
    for (const Verb& verb : verbs()) {
        if (verb.name.find(' ') == std::string::npos)
            out += fish_line("__fish_use_subcommand", {verb.name}, verb.says);
    }
    for (const auto& [first, seconds] : second_words()) out += fish_line(seen(first), seconds);
    out += fish_line(seen("record") + " kinds", kind_names());
    for (const auto& [kind, fields] : fields_by_kind())
        out += fish_line(seen("record") + "; and " + seen(kind), fields);
    for (const auto& [stage, steps] : steps_by_stage()) {
        out += fish_line(seen("tick") + "; and string match -q -- \"*" + stage + "*\" (commandline)", steps);
    }
    out += fish_line(seen("paper"), desk::paper_names());
    out += fish_line(seen("reckon"), topic_names());
    for (const Verb& verb : verbs()) out += fish_options(verb);
    return out;
}

std::vector<Verb> completion_verbs() {
    return {{"completion",
             "completion for your shell, and the manual page",
             "undersheet completion bash > ~/.undersheet.bash",
             {{"SHELL", "bash, zsh or fish; man writes the manual page", Count::one, Sort::shell}},
             {},
             run_completion}};
}

} // namespace undersheet::cli
