namespace Rinsewright.Contracts.Records;

/// <summary>One field written by an operation. Its value is text as typed; empty where it was cleared.</summary>
/// <param name="path">Which field, for example <c>name</c> or <c>water.a1.hardness</c>.</param>
/// <param name="value">What it is to be.</param>
/// <param name="order">
/// Place in the order of changes: the device's clock in milliseconds since 1970 UTC, or one more than the place of the value seen, whichever is later. So who changes
/// what a device with a clock ahead has written still comes after it.
/// </param>
/// <param name="overOrder">Place of the value seen when this was written; 0 where there was none.</param>
/// <param name="over">Operation that had written the value seen; null where there was none.</param>
public sealed class FieldChange(string path, string value, long order, long overOrder = 0, Guid? over = null)
{
    /// <summary>Which field.</summary>
    public string Path { get; init; } = path;

    /// <summary>What it is to be, as typed.</summary>
    public string Value { get; init; } = value;

    /// <summary>Place in the order of changes.</summary>
    public long Order { get; init; } = order;

    /// <summary>Place of the value seen; 0 for none.</summary>
    public long OverOrder { get; init; } = overOrder;

    /// <summary>Operation that had written the value seen; null for none.</summary>
    public Guid? Over { get; init; } = over;
}

/// <summary>A field as it stands: the latest value, and beside it the latest other one that its writer had not seen.</summary>
/// <param name="value">Text as typed.</param>
/// <param name="order">Place in the order of changes.</param>
/// <param name="operation">Operation that wrote it; decides where two have the same place.</param>
/// <param name="author">Who.</param>
/// <param name="at">When, by the clock of the device.</param>
/// <param name="overOrder">Place of the value its writer saw; 0 for none.</param>
/// <param name="over">Operation of the value its writer saw; null for none.</param>
/// <param name="other">What somebody else wrote meanwhile; null where nobody did.</param>
public sealed class FieldValue(
    string value,
    long order,
    Guid operation,
    string author,
    DateTimeOffset at,
    long overOrder = 0,
    Guid? over = null,
    FieldValue? other = null
)
{
    /// <summary>Text as typed.</summary>
    public string Value { get; init; } = value;

    /// <summary>Place in the order of changes.</summary>
    public long Order { get; init; } = order;

    /// <summary>Operation that wrote it.</summary>
    public Guid Operation { get; init; } = operation;

    /// <summary>Who.</summary>
    public string Author { get; init; } = author;

    /// <summary>When, by the clock of the device.</summary>
    public DateTimeOffset At { get; init; } = at;

    /// <summary>Place of the value its writer saw; 0 for none.</summary>
    public long OverOrder { get; init; } = overOrder;

    /// <summary>Operation of the value its writer saw; null for none.</summary>
    public Guid? Over { get; init; } = over;

    /// <summary>What somebody else wrote meanwhile; null where nobody did.</summary>
    public FieldValue? Other { get; init; } = other;

    /// <summary>The value an operation writes.</summary>
    public static FieldValue Of(Operation operation, FieldChange change) =>
        new(change.Value, change.Order, operation.Id, operation.Author, operation.At, change.OverOrder, change.Over);

    /// <summary>
    /// Both together: the later stands; of the others the latest is kept beside it, unless the writer of the standing one had seen it. It does not matter which is named
    /// first, how often one is joined, or in what order many are: the two latest of a set, and what the latest had seen, do not depend on that.
    /// </summary>
    public static FieldValue Join(FieldValue a, FieldValue b)
    {
        var top = b.IsAfter(a.Order, a.Operation) ? b : a;
        FieldValue? second = null;
        foreach (var candidate in new[] { a, a.Other, b, b.Other })
        {
            if (
                candidate is not null
                && candidate.Operation != top.Operation
                && (second is null || candidate.IsAfter(second.Order, second.Operation))
            )
            {
                second = candidate;
            }
        }

        return top.With(second is not null && second.IsAfter(top.OverOrder, top.Over ?? Guid.Empty) ? second.With(null) : null);
    }

    /// <summary>Whether this comes after a place in the order.</summary>
    public bool IsAfter(long order, Guid operation) => Order > order || (Order == order && Operation.CompareTo(operation) > 0);

    private FieldValue With(FieldValue? other) =>
        ReferenceEquals(other, Other) ? this : new(Value, Order, Operation, Author, At, OverOrder, Over, other);
}
