using System.Text.Json.Serialization;

namespace Rinsewright.Contracts.Records;

/// <summary>
/// A document of fields that several people fill in: a kitchen, a machine. Each field stands by itself; nothing is ever taken out, what is removed or deleted says so in a
/// field of its own.
/// </summary>
/// <param name="id">UUID made on a device.</param>
/// <param name="kind">Kind, <see cref="Kinds"/>.</param>
/// <param name="version">Schema version.</param>
/// <param name="fields">Fields by path.</param>
public sealed class FieldDocument(Guid id, string kind, int version, IReadOnlyDictionary<string, FieldValue> fields)
{
    /// <summary>Schema version written today.</summary>
    public const int CurrentVersion = 1;

    /// <summary>Field that says that the whole document is deleted.</summary>
    public const string DeletedPath = "deleted";

    /// <summary>Last part of the path that says that an item of a list is removed.</summary>
    public const string GonePart = "gone";

    /// <summary>Value of both of them.</summary>
    public const string Yes = "yes";

    /// <summary>UUID made on a device.</summary>
    public Guid Id { get; init; } = id;

    /// <summary>Kind.</summary>
    public string Kind { get; init; } = kind;

    /// <summary>Schema version.</summary>
    public int Version { get; init; } = version;

    /// <summary>Fields by path, in the order of their paths.</summary>
    public IReadOnlyDictionary<string, FieldValue> Fields { get; init; } = fields;

    /// <summary>Text of a field; empty where nobody wrote it.</summary>
    public string this[string path] => Fields.TryGetValue(path, out var field) ? field.Value : "";

    /// <summary>Whether it is deleted.</summary>
    [JsonIgnore]
    public bool Deleted => this[DeletedPath] == Yes;

    /// <summary>A document nobody has written to.</summary>
    public static FieldDocument Empty(Guid id, string kind) => new(id, kind, CurrentVersion, new Dictionary<string, FieldValue>());

    /// <summary>Ids of the items of a list that are not removed, in the order they were made (their ids rise).</summary>
    public IReadOnlyList<string> Items(string list)
    {
        var items = new List<string>();
        foreach (var path in Fields.Keys)
        {
            if (path.StartsWith(list + ".", StringComparison.Ordinal))
            {
                var rest = path[(list.Length + 1)..];
                var item = rest.IndexOf('.') is > 0 and var dot ? rest[..dot] : rest;
                if (!items.Contains(item) && this[$"{list}.{item}.{GonePart}"] != Yes)
                {
                    items.Add(item);
                }
            }
        }

        return items;
    }

    /// <summary>With what an operation writes. The same whatever the order of many, and however often.</summary>
    public FieldDocument With(Operation operation)
    {
        var written = new Dictionary<string, FieldValue>();
        foreach (var change in operation.Fields ?? [])
        {
            written[change.Path] = FieldValue.Of(operation, change);
        }

        return Join(new FieldDocument(Id, Kind, Version, written));
    }

    /// <summary>Both together, field by field.</summary>
    public FieldDocument Join(FieldDocument other)
    {
        var all = new Dictionary<string, FieldValue>(Fields);
        foreach (var (path, field) in other.Fields)
        {
            all[path] = all.TryGetValue(path, out var mine) ? FieldValue.Join(mine, field) : field;
        }

        return new FieldDocument(Id, Kind, Math.Max(Version, other.Version), Sorted(all));
    }

    /// <summary>
    /// The operations behind the values that stand here or beside what stands, each with those of its values that are left, the earliest first: what an office that was restored from an older copy is
    /// sent again. An office that has one of them already answers as it did before.
    /// </summary>
    /// <param name="office">What the office has; what would change nothing there is left out.</param>
    /// <param name="device">Which device sends them.</param>
    public IReadOnlyList<Operation> MissingAt(FieldDocument office, string device)
    {
        var found = new Dictionary<Guid, (FieldValue First, List<FieldChange> Changes)>();
        foreach (var (path, field) in Fields)
        {
            for (var value = field; value is not null; value = value.Other)
            {
                if (!found.TryGetValue(value.Operation, out var operation))
                {
                    found[value.Operation] = operation = (value, []);
                }

                operation.Changes.Add(new FieldChange(path, value.Value, value.Order, value.OverOrder, value.Over));
            }
        }

        var operations = new List<Operation>();
        foreach (var (id, (first, changes)) in found)
        {
            var operation = new Operation(id, Kind, Id, first.Author, device, first.At, "set", null, changes, Again: true);
            if (!office.Has(operation))
            {
                operations.Add(operation);
            }
        }

        operations.Sort((a, b) => a.Fields![0].Order.CompareTo(b.Fields![0].Order));
        return operations;
    }

    /// <summary>The operation that writes what is different from what stands here; null where nothing is.</summary>
    /// <param name="operationId">UUID version 7 made on the device.</param>
    /// <param name="changes">Path and text.</param>
    /// <param name="author">Who.</param>
    /// <param name="device">Which device.</param>
    /// <param name="at">When, by the device's clock.</param>
    public Operation? Write(
        Guid operationId,
        IEnumerable<KeyValuePair<string, string>> changes,
        string author,
        string device,
        DateTimeOffset at
    )
    {
        var written = new List<FieldChange>();
        foreach (var (path, value) in changes)
        {
            var seen = Fields.TryGetValue(path, out var field) ? field : null;
            // The same text again settles what two people wrote apart; otherwise it says nothing new.
            if ((seen?.Value ?? "") != value || seen?.Other is not null)
            {
                var order = Math.Max(at.ToUnixTimeMilliseconds(), (seen?.Order ?? 0) + 1);
                written.Add(new FieldChange(path, value, order, seen?.Order ?? 0, seen?.Operation));
            }
        }

        return written.Count == 0 ? null : new Operation(operationId, Kind, Id, author, device, at, "set", null, written);
    }

    /// <summary>The operation that takes the place of one that has not left the device: nobody saw that one, so this one saw what that one had seen.</summary>
    /// <param name="later">Written after <paramref name="earlier"/>, to the same fields.</param>
    /// <param name="earlier">Still on the device.</param>
    public static Operation Instead(Operation later, Operation earlier) =>
        later with
        {
            Fields =
            [
                .. later.Fields!.Select(f =>
                    earlier.Fields!.FirstOrDefault(e => e.Path == f.Path) is { } before
                        ? new FieldChange(f.Path, f.Value, f.Order, before.OverOrder, before.Over)
                        : f
                ),
            ],
        };

    /// <summary>This without what an operation that never left the device wrote, and with what takes its place.</summary>
    public FieldDocument Replacing(Operation instead)
    {
        var all = new Dictionary<string, FieldValue>(Fields);
        foreach (var change in instead.Fields!)
        {
            var now = FieldValue.Of(instead, change);
            all[change.Path] =
                all.TryGetValue(change.Path, out var before) && before.Other is { } other ? FieldValue.Join(now, other) : now;
        }

        return new FieldDocument(Id, Kind, Version, Sorted(all));
    }

    /// <summary>Whether an operation would change nothing here.</summary>
    public bool Has(Operation operation)
    {
        foreach (var (path, field) in With(operation).Fields)
        {
            if (
                !Fields.TryGetValue(path, out var mine)
                || mine.Operation != field.Operation
                || mine.Other?.Operation != field.Other?.Operation
            )
            {
                return false;
            }
        }

        return true;
    }

    private static Dictionary<string, FieldValue> Sorted(Dictionary<string, FieldValue> fields)
    {
        // A dictionary that nothing is taken out of keeps the order of its making: the same fields give the same text.
        var paths = new List<string>(fields.Keys);
        paths.Sort(StringComparer.Ordinal);
        var sorted = new Dictionary<string, FieldValue>(paths.Count);
        foreach (var path in paths)
        {
            sorted[path] = fields[path];
        }

        return sorted;
    }
}
