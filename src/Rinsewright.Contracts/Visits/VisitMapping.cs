using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Contracts.Visits;

/// <summary>A travelling visit as the engine's, every field looked at; and back.</summary>
public static partial class VisitMapping
{
    /// <summary>The rule set in force at a visit.</summary>
    /// <exception cref="ContractException">The set is not known.</exception>
    /// <exception cref="RuleSetException">The service's own set cannot be used.</exception>
    public static RuleSet Rules(this VisitDocument document) =>
        document.RuleSetJson is { } json
            ? RuleSets.Parse(json)
            : RuleSets.Find(document.RuleSet ?? RuleSets.DefaultId)
                ?? throw new ContractException(
                    "ruleSet",
                    $"'{document.RuleSet}' is not known; use one of {string.Join(", ", RuleSets.BuiltIn.Select(r => r.Id))}"
                );

    /// <summary>The engine's visit.</summary>
    /// <param name="document">As it travels.</param>
    /// <param name="knowledge">Whose ids it uses.</param>
    /// <exception cref="ContractException">A field cannot be; says which, and what is allowed.</exception>
    public static Visit ToVisit(this VisitDocument document, TradeKnowledge knowledge)
    {
        var instruments = Named(document.Instruments, "instruments", (i, field) => Wire.To(i, field));
        var supplies = Named(
            document.TestSupplies,
            "testSupplies",
            (s, field) => new TestSupply(s.Tests is { } t ? Wire.Parse<SanitizingMethod>(t, field + ".tests") : null, s.Lot, s.Expires)
        );
        if (document.Ended < document.Began)
        {
            throw new ContractException("ended", "before it began");
        }

        return new Visit
        {
            Machine = MachineOf(document),
            Began = document.Began,
            Ended = document.Ended,
            Technician = document.Technician,
            Label = document.Label is { } l ? new ProofRequest(Label: l).Terms().Label : null,
            Complaint = string.IsNullOrWhiteSpace(document.Complaint) ? null : document.Complaint,
            Cause = document.Cause is { } c ? Cause(c, knowledge) : null,
            Instruments = instruments,
            TestSupplies = supplies,
            Readings = Each(document.Readings, "readings", (r, f) => Reading(r, f, instruments, supplies)),
            Proofs = Each(document.Proofs, "proofs", Counted),
            Ware = Each(
                document.Ware,
                "ware",
                (w, f) =>
                    new WareSeen(
                        Id(w.Result, f + ".result", knowledge.WareResults.Select(r => r.Id), "a ware result"),
                        w.Found,
                        Wire.Parse<VisitMoment>(w.Moment, f + ".moment"),
                        w.Note
                    )
            ),
            CrewLogs = Each(document.CrewLogs, "crewLogs", CrewLog),
            Findings = Each(document.Findings, "findings", (x, f) => Finding(x, f, knowledge)),
            Parts = Each(document.Parts, "parts", (p, f) => Part(p, f, knowledge)),
            Photos = Each(
                document.Photos,
                "photos",
                (p, f) =>
                    new VisitPhoto(Sha(p.Sha256, f + ".sha256"), Wire.Parse<VisitMoment>(p.Moment, f + ".moment"), p.Zone, p.Part, p.At)
            ),
            Changes = Each(document.Changes, "changes", Change),
            PartsUsed = Each(document.PartsUsed, "partsUsed", PartUsed),
            Supplies = Each(document.Supplies, "supplies", Supply),
            Leaks = Each(
                document.Leaks,
                "leaks",
                (l, f) => new LeakLook(l.Dry, Wire.Parse<VisitMoment>(l.Moment, f + ".moment"), l.Where, l.At)
            ),
            Declined = Each(
                document.Declined,
                "declined",
                (d, f) =>
                    new Declined(
                        Wire.Parse<AcceptanceArea>(d.Area, f + ".area"),
                        Filled(d.Because, f + ".because", "a reason, in a few words")
                    )
            ),
            Training = Each(
                document.Training,
                "training",
                (t, f) =>
                    new Training(
                        Id(t.Topic, f + ".topic", knowledge.Visit.TrainingTopics.Select(k => k.Id), "a topic"),
                        t.Names ?? [],
                        t.Shown
                    )
            ),
            Upkeep = Each(
                document.Upkeep,
                "upkeep",
                (u, f) => new Upkeep(Id(u.Interval, f + ".interval", knowledge.Visit.Intervals.Select(k => k.Id), "an interval"), u.Last)
            ),
            Earlier = Each(
                document.Earlier,
                "earlier",
                (e, f) =>
                    new EarlierReading(
                        Kind(e.Kind, f + ".kind").Id,
                        Wire.To(e.Value ?? throw new ContractException(f + ".value", "absent"), f + ".value"),
                        Wire.Parse<OperatingState>(e.State, f + ".state"),
                        e.On
                    )
            ),
            Signatures = Each(
                document.Signatures,
                "signatures",
                (s, f) =>
                    new VisitSignature(
                        Wire.Parse<SignedFor>(s.For, f + ".for"),
                        Filled(s.Name, f + ".name", "who signs"),
                        s.At,
                        s.Image,
                        s.Strokes is { } strokes ? SignatureStrokes.Write(SignatureStrokes.Read(strokes, f + ".strokes")) : null
                    )
            ),
        };
    }

    private static Machine MachineOf(VisitDocument document)
    {
        var reading = MachineFile.Read(document.Machine.GetRawText());
        if (reading.Machine is { } machine)
        {
            return machine;
        }

        var problem = reading.Problems[0];
        var field = problem.Path.Length > 0 ? $"machine.{problem.Path}" : "machine";
        throw new ContractException(field, Words.For("en").Say(problem.Says));
    }

    private static VisitReading Reading(
        VisitReadingDto r,
        string field,
        IReadOnlyDictionary<string, Instrument> instruments,
        IReadOnlyDictionary<string, TestSupply> supplies
    )
    {
        var kind = Kind(r.Kind, field + ".kind");
        Engine.Quantities.Amount? value = r.Value is { } v ? Wire.To(v, kind.Point, field + ".value") : null;
        if (value is { } read && read.Unit.Dimension != kind.Unit.Dimension)
        {
            throw new ContractException(
                field + ".value",
                $"{r.Kind} is read in {kind.Unit.Ucum} or a unit of the same kind, not {read.Unit.Ucum}"
            );
        }

        if (r.RacksPerHour is { } racks && !(racks > 0 && racks < 1e5))
        {
            throw new ContractException(field + ".racksPerHour", "more than no racks; leave it out where nobody counted");
        }

        return new VisitReading(
            r.Kind,
            value,
            Wire.Parse<VisitMoment>(r.Moment, field + ".moment"),
            Wire.Parse<OperatingState>(r.State, field + ".state")
        )
        {
            Method = Wire.Parse<ReadingMethod>(r.Method, field + ".method"),
            Instrument = Reference(r.Instrument, instruments.Keys, field + ".instrument", "instruments"),
            Supply = Reference(r.Supply, supplies.Keys, field + ".supply", "testSupplies"),
            At = r.At,
            Reached = r.Reached,
            RacksPerHour = r.RacksPerHour,
            NotReadBecause = r.NotReadBecause,
        };
    }

    private static VisitReadingKind Kind(string id, string field) =>
        VisitReadingKinds.Find(id ?? "")
        ?? throw new ContractException(
            field,
            $"'{id}' is no reading; use one of {string.Join(", ", VisitReadingKinds.All.Select(k => k.Id))}"
        );

    private static VisitFinding Finding(VisitFindingDto x, string field, TradeKnowledge knowledge) =>
        knowledge.FindCheck(x.Id ?? "") is not null
        || knowledge.FindSymptom(x.Id ?? "") is not null
        || knowledge.FindState(x.Id ?? "") is not null
            ? new VisitFinding(x.Id!, x.Found, Wire.Parse<VisitMoment>(x.Moment, field + ".moment"), x.Note)
            : throw new ContractException(
                field + ".id",
                $"'{x.Id}' is no symptom (sym-), check (chk-) or state (rd-.../...) of the knowledge"
            );

    private static PartLook Part(PartLookDto p, string field, TradeKnowledge knowledge)
    {
        var part =
            knowledge.Anatomy.Parts.FirstOrDefault(k => k.Id == p.Part)
            ?? throw new ContractException(field + ".part", $"'{p.Part}' is no part of the knowledge");
        var wear = p.Wear ?? [];
        return wear.All(w => w >= 0 && w < part.Wear.Count)
            ? new PartLook(p.Part, Wire.Parse<PartState>(p.State, field + ".state"), Wire.Parse<VisitMoment>(p.Moment, field + ".moment"))
            {
                Wear = wear,
                Fault = p.Fault is { } fault ? Id(fault, field + ".fault", knowledge.Faults.Keys, "a fault") : null,
                Note = p.Note,
            }
            : throw new ContractException(field + ".wear", $"signs of wear of {p.Part} are numbered 0 to {part.Wear.Count - 1}");
    }

    private static VisitCause Cause(VisitCauseDto c, TradeKnowledge knowledge) =>
        new(
            Id(c.Fault, "cause.fault", knowledge.Faults.Keys, "a fault"),
            Wire.Parse<CauseKnown>(c.Known, "cause.known"),
            Wire.Parse<CauseOwner>(c.Owner, "cause.owner")
        );

    private static VisitChange Change(VisitChangeDto c, string field)
    {
        var (before, after) = (Wire.ToOptional(c.Before, field + ".before"), Wire.ToOptional(c.After, field + ".after"));
        return before is { } b && after is { } a && a.Unit.Dimension != b.Unit.Dimension
            ? throw new ContractException(field + ".after", $"{a.Unit.Ucum} does not compare with {b.Unit.Ucum}")
            : new VisitChange(
                Wire.Parse<ChangeKind>(c.Kind, field + ".kind"),
                Filled(c.What, field + ".what", "what was changed"),
                [.. (c.Areas ?? []).Select((x, i) => Wire.Parse<AcceptanceArea>(x, $"{field}.areas[{i}]"))]
            )
            {
                Part = c.Part,
                Before = before,
                After = after,
                At = c.At,
            };
    }

    private static PartUse PartUsed(PartUseDto p, string field) =>
        p.Count >= 1
            ? new PartUse(
                Filled(p.What, field + ".what", "what part"),
                p.Count,
                Wire.Parse<PartWhere>(p.Where, field + ".where"),
                p.Expected
            )
            : throw new ContractException(field + ".count", "at least 1");

    private static SupplyCount Supply(SupplyCountDto s, string field) =>
        s.Count >= 0 && double.IsFinite(s.Count) && s.DaysLeft is null or >= 0
            ? new SupplyCount(
                Filled(s.Product, field + ".product", "the name on the container"),
                s.Feeds is { } f ? Wire.Parse<FedProduct>(f, field + ".feeds") : null,
                s.Count,
                s.DaysLeft
            )
            {
                Changed = s.Changed,
                Primed = s.Primed,
            }
            : throw new ContractException(field + (s.DaysLeft < 0 ? ".daysLeft" : ".count"), "a number, 0 or more");

    private static string Sha(string? text, string field) =>
        text is { Length: 64 } && text.All(char.IsAsciiHexDigitLower)
            ? text
            : throw new ContractException(field, "the SHA-256 of the photograph in 64 lower-case hex digits");

    private static string Id(string? id, string field, IEnumerable<string> known, string what) =>
        id is not null && known.Contains(id, StringComparer.Ordinal)
            ? id
            : throw new ContractException(field, $"'{id}' is not {what} of the knowledge");

    private static string Filled(string? text, string field, string what) =>
        string.IsNullOrWhiteSpace(text) ? throw new ContractException(field, $"empty; enter {what}") : text;

    private static string? Reference(string? name, IEnumerable<string> names, string field, string where) =>
        name is null || names.Contains(name, StringComparer.Ordinal)
            ? name
            : throw new ContractException(field, $"'{name}' does not stand in {where}");

    private static IReadOnlyList<TOut> Each<TIn, TOut>(IReadOnlyList<TIn>? items, string field, Func<TIn, string, TOut> map) =>
        [.. (items ?? []).Select((x, i) => x is null ? throw new ContractException($"{field}[{i}]", "empty") : map(x, $"{field}[{i}]"))];

    private static Dictionary<string, TOut> Named<TIn, TOut>(
        IReadOnlyDictionary<string, TIn>? items,
        string field,
        Func<TIn, string, TOut> map
    ) =>
        (items ?? new Dictionary<string, TIn>(StringComparer.Ordinal)).ToDictionary(
            x => x.Key,
            x => map(x.Value, $"{field}.{x.Key}"),
            StringComparer.Ordinal
        );
}
