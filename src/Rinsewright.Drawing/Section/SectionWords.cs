using Rinsewright.Contracts.Language;

namespace Rinsewright.Drawing.Section;

/// <summary>What the section says in words.</summary>
public static class SectionWords
{
    /// <summary>Name of a part on its flag.</summary>
    public static string Flag(SectionPart part, Words words, bool isShort) =>
        words[(isShort ? "section.short." : "section.part.") + part.Name];

    /// <summary>Name of a part, with its place where the machine has several of that name.</summary>
    public static string Name(SectionPart part, SectionPlan plan, Words words) =>
        part.Place.Length > 0 && plan.Parts.Count(p => p.Name == part.Name) > 1
            ? words.Say("section.placed", ("part", words["section.part." + part.Name]), ("place", words["section.place." + part.Place]))
            : words["section.part." + part.Name];

    /// <summary>Name and state of a part, and its reading where there is one.</summary>
    public static string Label(SectionPart part, SectionPlan plan, SectionOptions options)
    {
        var words = options.Words;
        var state = options.States.GetValueOrDefault(part.Id);
        var name = words.Say("section.label", ("part", Name(part, plan, words)), ("state", State(state, words)));
        return options.Readings.TryGetValue(part.Id, out var reading)
            ? words.Say("section.label-read", ("label", name), ("reading", reading.Text))
            : name;
    }

    /// <summary>A state in words.</summary>
    public static string State(PartState state, Words words) => words["section.state." + state.ToString().ToLowerInvariant()];

    /// <summary>Every part with its name, state and reading: the drawing for whoever cannot see it.</summary>
    public static string Describe(SectionPlan plan, SectionOptions options) =>
        string.Join("; ", plan.Parts.Select(p => Label(p, plan, options))) + ".";
}
