namespace Rinsewright.Server.Storage;

/// <summary>A document as it now stands.</summary>
public sealed class DocumentRow
{
    /// <summary>Id made on the device.</summary>
    public Guid Id { get; set; }

    /// <summary>Kind, <see cref="Contracts.Records.Kinds"/>.</summary>
    public required string Kind { get; set; }

    /// <summary>The document; null where it is deleted.</summary>
    public string? Json { get; set; }

    /// <summary>Operation that wrote this version.</summary>
    public Guid OperationId { get; set; }

    /// <summary>Time by which the later writer wins: the device's clock, never later than the time of receipt.</summary>
    public DateTimeOffset WrittenAt { get; set; }

    /// <summary>Number of the change, rising in the order changes became visible.</summary>
    public long Revision { get; set; }

    /// <summary>Versions kept, this one included.</summary>
    public int Versions { get; set; }

    /// <summary>Whether it belongs to the demo service.</summary>
    public bool Demo { get; set; }

    /// <summary>Who wrote this version.</summary>
    public required string Author { get; set; }

    /// <summary>When this version was written by the clock of its device.</summary>
    public DateTimeOffset StatedAt { get; set; }

    /// <summary>When it was made; the time of the change where it is deleted.</summary>
    public DateTimeOffset MadeAt { get; set; }

    /// <summary>Offset of <see cref="MadeAt"/> from UTC, minutes.</summary>
    public int OffsetMinutes { get; set; }

    /// <summary>Kitchen, copied out of the document so that a list need not open it.</summary>
    public string Kitchen { get; set; } = "";

    /// <summary>Machine, copied out.</summary>
    public string Machine { get; set; } = "";

    /// <summary>Technician, copied out.</summary>
    public string Technician { get; set; } = "";

    /// <summary>Verdict, copied out.</summary>
    public string Verdict { get; set; } = "";

    /// <summary>Passes found, copied out.</summary>
    public int Passes { get; set; }

    /// <summary>Kitchen it belongs to, copied out; null where it names none.</summary>
    public Guid? KitchenId { get; set; }
}

/// <summary>One operation, kept for ever: its id is the primary key, so it is applied once.</summary>
public sealed class OperationRow
{
    /// <summary>Id made on the device.</summary>
    public Guid Id { get; set; }

    /// <summary>Document changed.</summary>
    public Guid DocumentId { get; set; }

    /// <summary>Kind of the document.</summary>
    public required string Kind { get; set; }

    /// <summary><c>put</c>, <c>delete</c> or <c>set</c>.</summary>
    public required string Action { get; set; }

    /// <summary>Who.</summary>
    public required string Author { get; set; }

    /// <summary>Account that sent it; null where there was none.</summary>
    public Guid? AccountId { get; set; }

    /// <summary>Which device.</summary>
    public required string Device { get; set; }

    /// <summary>When by the device's clock.</summary>
    public DateTimeOffset StatedAt { get; set; }

    /// <summary>When it was received here.</summary>
    public DateTimeOffset ReceivedAt { get; set; }

    /// <summary><c>applied</c> or <c>superseded</c>: the answer that was given.</summary>
    public required string Outcome { get; set; }

    /// <summary>Number of the change.</summary>
    public long Revision { get; set; }

    /// <summary>The operation it replaced or gave way to, where another author or device wrote that.</summary>
    public Guid? Replaced { get; set; }

    /// <summary>The document or the fields it carried; null for <c>delete</c>.</summary>
    public string? Json { get; set; }
}

/// <summary>One list of changes that was taken in. A store put back to an older copy gives its numbers a second time, and another tag with them.</summary>
public sealed class TurnRow
{
    /// <summary>Last number given to a change of the list; the first is the one after the turn before.</summary>
    public long Number { get; set; }

    /// <summary>Made by chance when the list was taken in: where it is known, everything up to the number is as it was.</summary>
    public Guid Tag { get; set; }

    /// <summary>Tag of the one row that stands for everything taken in before there were tags.</summary>
    public static readonly Guid BeforeTags = Guid.Empty;
}

/// <summary>The one row about the store itself.</summary>
public sealed class StoreRow
{
    /// <summary>Always <see cref="TheOne"/>.</summary>
    public int Id { get; set; }

    /// <summary>Names this store in cursors.</summary>
    public Guid StoreId { get; set; }

    /// <summary>Last number given to a change. Raising it takes the row's lock, so changes become visible in the order of their numbers.</summary>
    public long Revision { get; set; }

    /// <summary>When the demo service was put in; null before.</summary>
    public DateTimeOffset? DemoSeededAt { get; set; }

    /// <summary>Id of the one row.</summary>
    public const int TheOne = 1;
}
