using System.CommandLine;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli;

/// <summary>A command with what its help says beyond the list of options: sections, examples, exit statuses.</summary>
/// <param name="name">Name, as typed.</param>
/// <param name="words">Words of the help.</param>
/// <param name="under">Command it stands under; null for one of the first level.</param>
internal sealed class DescribedCommand(string name, Words words, string? under = null)
    : Command(name, words[$"cli.{Key(under, name)}.about"])
{
    private readonly List<(string Title, IReadOnlyList<Option> Options)> sections = [];

    /// <summary>Options by section, in the order of the help.</summary>
    public IReadOnlyList<(string Title, IReadOnlyList<Option> Options)> Sections => sections;

    /// <summary>Text after the options: examples and exit statuses.</summary>
    public string Close { get; } = words[$"cli.{Key(under, name)}.close"];

    /// <summary>How the arguments look, for the usage line.</summary>
    public string Usage { get; } = words[$"cli.{Key(under, name)}.usage"];

    /// <summary>The command with those it stands under, as typed.</summary>
    public string Way { get; } = under is null ? name : $"{under} {name}";

    /// <summary>Adds a section of options, each described by its words unless it is described already.</summary>
    public void AddSection(string key, params Option[] options)
    {
        foreach (var option in options)
        {
            option.Description ??= words[$"cli.option.{option.Name.TrimStart('-')}"];
            Add(option);
        }

        sections.Add((words[$"cli.section.{key}"], options));
    }

    private static string Key(string? under, string name) => under is null ? name : $"{under}-{name}";
}

/// <summary>The three kinds of option there are here. All values arrive as text and are read by their own rules, with their own messages.</summary>
internal static class Options
{
    /// <summary>Takes one value.</summary>
    public static Option<string?> One(string name, string value) => new(name) { HelpName = value, Arity = ArgumentArity.ExactlyOne };

    /// <summary>Takes one value each time it is given, any number of times.</summary>
    public static Option<string[]> Many(string name, string value) =>
        new(name)
        {
            HelpName = value,
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = false,
            DefaultValueFactory = _ => [],
        };

    /// <summary>Takes no value.</summary>
    public static Option<bool> Flag(string name) => new(name) { Arity = ArgumentArity.Zero };

    /// <summary>Takes one value and completes these.</summary>
    public static Option<string?> Among(string name, string value, IEnumerable<string> values)
    {
        var option = One(name, value);
        option.CompletionSources.Add([.. values]);
        return option;
    }
}
