using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Client.Records;

/// <summary>A kitchen, machine or visit in one line of the list, so that a list need not open it.</summary>
public sealed class RecordLine
{
    /// <summary>Document.</summary>
    public Guid Id { get; init; }

    /// <summary>Kind, <see cref="Kinds"/>.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Address of a kitchen, kind of a machine, standing of a visit.</summary>
    public string About { get; init; } = "";

    /// <summary>Machine of a visit; null for none.</summary>
    public Guid? Machine { get; init; }

    /// <summary>When a visit began; null for other kinds.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>Kitchen of a machine or visit; null for none.</summary>
    public Guid? Kitchen { get; init; }

    /// <summary>Day something is due, the earliest; null for none.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>Day of the next visit; null for none.</summary>
    public DateOnly? NextVisit { get; init; }

    /// <summary>Things still to do.</summary>
    public int Open { get; init; }

    /// <summary>Parts a visit fitted or left owed, as its record has them (JSON); null for none.</summary>
    public string? Parts { get; init; }

    /// <summary>Kitchen of a visit that has <see cref="Parts"/>, which a store finds them by; null for others.</summary>
    public Guid? PartsOf { get; init; }

    /// <summary>Whether it is deleted.</summary>
    public bool Deleted { get; init; }

    /// <summary>The line of a document.</summary>
    public static RecordLine Of(FieldDocument d)
    {
        if (d.Kind == Kinds.Machine)
        {
            return new()
            {
                Id = d.Id,
                Kind = d.Kind,
                Name = d[MachinePaths.Name],
                About = d[MachinePaths.Type],
                Kitchen = Guid.TryParse(d[MachinePaths.Kitchen], out var kitchen) ? kitchen : null,
                Deleted = d.Deleted,
            };
        }

        if (d.Kind == Kinds.Visit)
        {
            var parts = d[VisitPaths.PartsUsed] is { Length: > 0 } used ? used : null;
            Guid? at = Guid.TryParse(d[VisitPaths.Kitchen], out var place) ? place : null;
            return new()
            {
                Id = d.Id,
                Kind = d.Kind,
                Name = d[VisitPaths.MachineName],
                About = d[VisitPaths.Standing],
                Kitchen = at,
                Parts = parts,
                PartsOf = parts is null ? null : at,
                Machine = Guid.TryParse(d[VisitPaths.Machine], out var machine) ? machine : null,
                At = DateTimeOffset.TryParse(
                    d[VisitPaths.Began],
                    System.Globalization.CultureInfo.InvariantCulture,
                    System.Globalization.DateTimeStyles.RoundtripKind,
                    out var began
                )
                    ? began
                    : null,
                NextVisit = FollowUp.Day(d[VisitPaths.Next]),
                Deleted = d.Deleted,
            };
        }

        DateOnly? due = null;
        var open = 0;
        foreach (var item in FollowUp.OpenOf(d))
        {
            open++;
            due = item.Due is { } day && (due is null || day < due) ? day : due;
        }

        return new()
        {
            Id = d.Id,
            Kind = d.Kind,
            Name = d[KitchenPaths.Name],
            About = d[KitchenPaths.Address],
            Due = due,
            NextVisit = FollowUp.Day(d[KitchenPaths.NextVisit]),
            Open = open,
            Deleted = d.Deleted,
        };
    }
}

/// <summary>Something still to do in a kitchen.</summary>
public sealed class FollowUp
{
    /// <summary>Item in the kitchen's list.</summary>
    public string Item { get; init; } = "";

    /// <summary>What.</summary>
    public string What { get; init; } = "";

    /// <summary>What to take along.</summary>
    public string Take { get; init; } = "";

    /// <summary>Day it is due; null for none, or where what was typed is no day.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>What is not done yet of a kitchen, the earliest due first.</summary>
    public static IEnumerable<FollowUp> OpenOf(FieldDocument kitchen)
    {
        var open = new List<FollowUp>();
        foreach (var item in kitchen.Items(KitchenPaths.FollowUps))
        {
            string At(string part) => kitchen[$"{KitchenPaths.FollowUps}.{item}.{part}"];
            if (At("done") != FieldDocument.Yes)
            {
                open.Add(
                    new FollowUp
                    {
                        Item = item,
                        What = At("what"),
                        Take = At("take"),
                        Due = Day(At("due")),
                    }
                );
            }
        }

        open.Sort((a, b) => (a.Due ?? DateOnly.MaxValue).CompareTo(b.Due ?? DateOnly.MaxValue));
        return open;
    }

    /// <summary>A day as the browser's date field writes it; null for none.</summary>
    public static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            System.Globalization.CultureInfo.InvariantCulture,
            System.Globalization.DateTimeStyles.None,
            out var day
        )
            ? day
            : null;
}
