using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

/// <summary>Words of a visit: statements whose values may be phrases of the knowledge, plain lines, names of readings.</summary>
public static class VisitWords
{
    /// <summary>A statement in words; names of the knowledge begin a sentence with a capital.</summary>
    public static string Say(this Words words, Statement statement)
    {
        var text = words.Say(Wire.From(Plain(statement, words)));
        return Capital(text);
    }

    /// <summary>A plain line as one paragraph.</summary>
    public static string Say(this Words words, PlainLine line) => string.Join(" ", line.Parts.Select(p => words.Say(p)));

    /// <summary>Name of a reading.</summary>
    public static string Name(this Words words, JudgedReading line) => words.NameOfReading(line.Known, line.Reading.Kind);

    /// <summary>Name of a reading by its entry, else by its id.</summary>
    public static string NameOfReading(this Words words, KnownReading? known, string id) =>
        Capital(known is { } k ? k.Name.In(words.Language) : words[$"visit.kind.{id}"]);

    /// <summary>What makes a machine safe again: the cure and who may do it, then the checks that have to find it gone.</summary>
    public static string SafeAgain(this Words words, StopReason stop)
    {
        List<string> says = [];
        if (stop.Cure is { } cure)
        {
            var text = Capital(cure.In(words.Language));
            // Some cures say it themselves: a licensed electrician swaps two legs.
            says.Add(
                stop.Who?.Name.In(words.Language) is { } who && !text.Contains(who, StringComparison.CurrentCultureIgnoreCase)
                    ? $"{text} ({who})."
                    : $"{text}."
            );
        }

        if (stop.Checks.Count > 0)
        {
            says.Add(
                words.Say("visit.sheet.then-check", ("how", string.Join(". ", stop.Checks.Select(c => Capital(c.In(words.Language))))))
            );
        }

        return string.Join(" ", says);
    }

    /// <summary>A text with a capital at its beginning; what has its own way of writing, as pH, keeps it.</summary>
    public static string Capital(string text) =>
        text.Length > 0 && char.IsLower(text[0]) && !(text.Length > 1 && char.IsUpper(text[1]))
            ? char.ToUpperInvariant(text[0]) + text[1..]
            : text;

    private static Statement Plain(Statement statement, Words words) =>
        new(
            statement.Key,
            [
                .. statement.Values.Select(v =>
                    v.Value switch
                    {
                        Phrase p => new StatementValue(v.Name, Capital(p.In(words.Language))),
                        Statement s => new StatementValue(v.Name, Plain(s, words)),
                        _ => v,
                    }
                ),
            ]
        );
}
