using System.CommandLine;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli;

/// <summary><c>rinsewright completion SHELL</c>: a script that completes commands, options and values; it asks the program itself.</summary>
internal static class CompletionCommand
{
    private static readonly string[] Shells = ["bash", "zsh", "pwsh"];

    public static Command Make(Words words, Terminal terminal)
    {
        var shell = new Argument<string>("shell") { HelpName = "SHELL", Arity = ArgumentArity.ExactlyOne };
        shell.CompletionSources.Add(Shells);
        var command = new DescribedCommand("completion", words) { shell };
        command.AddSection("output", Options.Among("--language", "en|es", Words.Languages));
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(shell)!;
            terminal.Output.Write(Script(name) ?? throw new UsageException(CommandLine.NotAmong(words, "SHELL", name, Shells)));
            return ExitStatus.Done;
        });
        return command;
    }

    // The program answers "[suggest:POSITION] LINE" with one candidate a line.
    private static string? Script(string shell) =>
        shell switch
        {
            "bash" => """
                _rinsewright() {
                    local IFS=$'\n'
                    local candidates
                    candidates=$(rinsewright "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)
                    COMPREPLY=($(compgen -W "${candidates}" -- "${COMP_WORDS[COMP_CWORD]}"))
                }
                complete -o default -F _rinsewright rinsewright

                """,
            "zsh" => """
                #compdef rinsewright
                _rinsewright() {
                    local -a candidates
                    candidates=("${(@f)$(rinsewright "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
                    if (( ${#candidates} )) && [[ -n "${candidates[1]}" ]]; then
                        compadd -- "${candidates[@]}"
                    else
                        _files
                    fi
                }
                compdef _rinsewright rinsewright

                """,
            "pwsh" => """
                Register-ArgumentCompleter -Native -CommandName rinsewright -ScriptBlock {
                    param($wordToComplete, $commandAst, $cursorPosition)
                    rinsewright "[suggest:$cursorPosition]" "$commandAst" 2>$null | ForEach-Object {
                        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
                    }
                }

                """,
            _ => null,
        };
}
