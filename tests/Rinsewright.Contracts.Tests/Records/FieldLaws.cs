using System.Text.Json;
using CsCheck;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Contracts.Tests.Records;

/// <summary>
/// The rule by which what several people wrote comes together. The laws are those of a join semilattice (Shapiro et al. 2011, "Conflict-free replicated data types", from
/// memory): joined in any order, grouped in any way, as often as one likes, the outcome is the same. What it should be is worked out here from the whole set.
/// </summary>
public sealed class FieldLaws
{
    private static readonly Guid Kitchen = new("01993a00-0001-7000-8000-7a6d617261c1");
    private static readonly string[] Paths = ["name", "note", "water.a.hardness"];

    [Fact]
    public void Any_order_any_grouping_any_repetition_gives_the_same_document() =>
        Histories.Sample(
            (operations, seed) =>
            {
                var random = new Random(seed);
                var straight = Text(All(operations));
                var shuffled = operations.Concat(operations.Where(_ => random.Next(2) == 0)).OrderBy(_ => random.Next()).ToList();
                Assert.Equal(straight, Text(All(shuffled)));
                var cut = random.Next(operations.Count + 1);
                var (left, right) = (All(operations.Take(cut)), All(operations.Skip(cut)));
                Assert.Equal(straight, Text(left.Join(right)));
                Assert.Equal(straight, Text(right.Join(left)));
                Assert.Equal(straight, Text(All(operations).Join(left).Join(All(operations))));
            },
            iter: 3000
        );

    [Fact]
    public void The_latest_stands_and_beside_it_the_latest_its_writer_had_not_seen() =>
        Histories.Sample(
            (operations, _) =>
            {
                var document = All(operations);
                foreach (var path in Paths)
                {
                    // Worked out from the whole set, not joined one by one.
                    var written = operations
                        .SelectMany(o => o.Fields!.Where(f => f.Path == path).Select(f => (Operation: o, Change: f)))
                        .OrderBy(w => w.Change.Order)
                        .ThenBy(w => w.Operation.Id)
                        .ToList();
                    if (written.Count == 0)
                    {
                        Assert.False(document.Fields.ContainsKey(path));
                        continue;
                    }

                    var last = written[^1];
                    var unseen = written
                        .SkipLast(1)
                        .Where(w => (w.Change.Order, w.Operation.Id).CompareTo((last.Change.OverOrder, last.Change.Over ?? Guid.Empty)) > 0)
                        .ToList();
                    var field = document.Fields[path];
                    Assert.Equal((last.Operation.Id, last.Change.Value), (field.Operation, field.Value));
                    Assert.Equal(unseen.Count == 0 ? null : unseen[^1].Operation.Id, field.Other?.Operation);
                }
            },
            iter: 3000
        );

    [Fact]
    public void Two_people_on_two_fields_both_stand_and_on_one_field_the_later_with_the_other_beside_it()
    {
        var base0 = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        var first = Write(base0, 1, "Ines Calloway", ("name", "Larkspur"), ("note", "steps"));
        var seen = base0.With(first);
        var ines = Write(seen, 5, "Ines Calloway", ("note", "ring at the dock"));
        var bram = Write(seen, 6, "Bram Oakes", ("note", "dock is closed"), ("name", "Larkspur Lodge"));
        var both = seen.With(bram).With(ines);
        Assert.Equal(("Larkspur Lodge", "dock is closed"), (both["name"], both["note"]));
        Assert.Equal("ring at the dock", both.Fields["note"].Other!.Value);
        Assert.Null(both.Fields["name"].Other);

        // Whoever then writes it has seen both.
        var settled = both.With(Write(both, 9, "Ines Calloway", ("note", "dock is closed")));
        Assert.Equal("dock is closed", settled["note"]);
        Assert.Null(settled.Fields["note"].Other);
    }

    [Fact]
    public void A_clock_that_runs_ahead_loses_to_whoever_has_seen_its_value()
    {
        var ahead = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        ahead = ahead.With(Write(ahead, 60L * 24 * 365 * 10, "Ines Calloway", ("name", "from 2036")));
        var now = ahead.With(Write(ahead, 5, "Bram Oakes", ("name", "Larkspur Lodge")));
        Assert.Equal("Larkspur Lodge", now["name"]);
        Assert.Null(now.Fields["name"].Other);
    }

    [Fact]
    public void What_never_left_the_device_can_be_replaced_and_nobody_can_tell()
    {
        var seen = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        seen = seen.With(Write(seen, 1, "Ines Calloway", ("note", "a")));
        var colleague = Write(seen, 3, "Bram Oakes", ("note", "b"));
        var draft = Write(seen, 4, "Ines Calloway", ("note", "c"));
        var here = seen.With(draft);
        var last = FieldDocument.Instead(Write(here, 5, "Ines Calloway", ("note", "cd")), draft);
        here = here.Replacing(last);
        Assert.Equal("cd", here["note"]);
        Assert.Equal(Text(seen.With(colleague).With(last)), Text(here.Join(seen.With(colleague))));
        Assert.Equal("b", here.Join(seen.With(colleague)).Fields["note"].Other!.Value); // the draft had not seen it either
    }

    [Fact]
    public void Items_of_a_list_are_added_apart_and_removed_with_a_mark()
    {
        var start = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        var a = Write(start, 1, "Ines Calloway", ("water.a.hardness", "18 gpg"));
        var b = Write(start, 2, "Bram Oakes", ("water.b.hardness", "310 mg/L"));
        var both = start.With(b).With(a);
        Assert.Equal(["a", "b"], both.Items("water"));
        var removed = both.With(Write(both, 3, "Bram Oakes", ("water.a.gone", "yes")));
        Assert.Equal(["b"], removed.Items("water"));
        Assert.Equal("18 gpg", removed["water.a.hardness"]);
    }

    [Fact]
    public void Nothing_is_written_where_nothing_changed_and_JSON_gives_it_back()
    {
        var start = FieldDocument.Empty(Kitchen, Kinds.Kitchen);
        var document = start.With(Write(start, 1, "Ines Calloway", ("name", "Larkspur ⚓ Lodge")));
        Assert.Null(document.Write(Guid.CreateVersion7(), [new("name", "Larkspur ⚓ Lodge"), new("note", "")], "x", "y", At(3)));
        var again = JsonSerializer.Deserialize(Text(document), ContractsJson.Default.FieldDocument)!;
        Assert.Equal(Text(document), Text(again));
    }

    [Theory]
    [InlineData("name", true)]
    [InlineData("water.01993a00-0001-7000.hardness", true)]
    [InlineData("", false)]
    [InlineData("a..b", false)]
    [InlineData("a b", false)]
    [InlineData("ñ", false)]
    public void A_path_is_letters_digits_and_hyphens(string path, bool good) => Assert.Equal(good, FieldCheck.IsPath(path));

    private static Gen<(IReadOnlyList<Operation>, int)> Histories =>
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, int.MaxValue])
            .Select(
                (count, seed) =>
                {
                    // People who each see a part of what the others wrote before they write.
                    var random = new Random(seed);
                    var operations = new List<Operation>();
                    for (var i = 0; i < count; i++)
                    {
                        var seen = All(operations.Where(_ => random.Next(2) == 0));
                        var bytes = new byte[16];
                        random.NextBytes(bytes);
                        var changes = Paths.Where(_ => random.Next(2) == 0).Append("name").Distinct();
                        var operation = seen.Write(
                            new Guid(bytes),
                            changes.Select(p => KeyValuePair.Create(p, $"{i}-{p}")),
                            random.Next(2) == 0 ? "Ines Calloway" : "Bram Oakes",
                            "phone",
                            At(random.Next(4))
                        );
                        operations.Add(operation!);
                    }

                    return ((IReadOnlyList<Operation>)operations, seed);
                }
            );

    private static FieldDocument All(IEnumerable<Operation> operations) =>
        operations.Aggregate(FieldDocument.Empty(Kitchen, Kinds.Kitchen), (d, o) => d.With(o));

    private static Operation Write(FieldDocument seen, long minute, string author, params (string Path, string Value)[] changes) =>
        seen.Write(Guid.CreateVersion7(), changes.Select(c => KeyValuePair.Create(c.Path, c.Value)), author, "phone", At(minute))!;

    private static DateTimeOffset At(long minute) => new DateTimeOffset(2026, 11, 20, 9, 30, 0, TimeSpan.Zero).AddMinutes(minute);

    private static string Text(FieldDocument document) => JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument);
}
