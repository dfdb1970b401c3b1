using System.CommandLine;
using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli;

/// <summary>Help in the language asked for, 80 columns wide.</summary>
internal static class HelpText
{
    private const int NameColumn = 30;

    public static void Write(TextWriter writer, Command command, Words words)
    {
        var page = new TextPage(writer);
        page.Paragraph(command.Description ?? "");
        page.Line();
        var described = command as DescribedCommand;
        page.Heading(words["cli.help.usage"]);
        page.Line(described is null ? $"  rinsewright {words["cli.help.root-usage"]}" : $"  rinsewright {described.Way} {described.Usage}");
        if (command.Subcommands.Count > 0)
        {
            page.Line();
            page.Heading(words["cli.help.commands"]);
            foreach (var sub in command.Subcommands)
            {
                page.Entry($"  {sub.Name}", sub.Description ?? "", NameColumn);
            }
        }

        foreach (var (title, options) in described?.Sections ?? [])
        {
            page.Line();
            page.Heading(title);
            foreach (var option in options)
            {
                page.Entry($"  {option.Name}{(option.HelpName is { } value ? " " + value : "")}", option.Description ?? "", NameColumn);
            }
        }

        page.Line();
        page.Heading(words["cli.help.always"]);
        page.Entry("  --help", words["cli.option.help"], NameColumn);
        if (described is null)
        {
            page.Entry("  --version", words["cli.option.version"], NameColumn);
        }

        page.Line();
        foreach (var line in (described?.Close ?? words["cli.close"]).Split('\n'))
        {
            page.Line(line);
        }
    }
}
