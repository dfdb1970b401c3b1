using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Contracts.Records;

/// <summary>A saved proof: what was asked, what came out, whose machine, and which original files stand behind it.</summary>
/// <param name="Id">UUID version 7 made on the device.</param>
/// <param name="Version">Schema version of this record.</param>
/// <param name="Kitchen">Kitchen's name as typed.</param>
/// <param name="Machine">Machine's name as typed.</param>
/// <param name="Technician">Who made the proof.</param>
/// <param name="At">When it was made, with offset.</param>
/// <param name="Request">What was asked.</param>
/// <param name="Report">What came out.</param>
/// <param name="Files">Original files, by content.</param>
/// <param name="Note">Free note, for example what was done.</param>
/// <param name="KitchenId">The kitchen's document; null where its name alone was typed.</param>
/// <param name="MachineId">The machine's document; null where its name alone was typed.</param>
/// <param name="Unjudged">True where more is asked than <paramref name="Report"/> answers, which then says nothing of it: whoever opens the proof has it judged. Null or false where the report answers what is asked.</param>
public sealed record ProofDocument(
    Guid Id,
    int Version,
    string Kitchen,
    string Machine,
    string Technician,
    DateTimeOffset At,
    ProofRequest Request,
    ProofReport Report,
    IReadOnlyList<FileReference> Files,
    string? Note = null,
    Guid? KitchenId = null,
    Guid? MachineId = null,
    bool? Unjudged = null
)
{
    /// <summary>Schema version written today.</summary>
    public const int CurrentVersion = 1;
}

/// <summary>An original file by its content.</summary>
/// <param name="Sha256">Lower-case hex of its SHA-256.</param>
/// <param name="Name">Name it came with.</param>
/// <param name="Size">Bytes.</param>
public sealed record FileReference(string Sha256, string Name, long Size);

/// <summary>
/// One change by one person on one device, sent to the office once: its id is the primary key there, so that a repeated send changes nothing.
/// </summary>
/// <param name="Id">UUID version 7 made on the device.</param>
/// <param name="Kind">Kind of document, <see cref="Kinds"/>.</param>
/// <param name="DocumentId">Document changed.</param>
/// <param name="Author">Who.</param>
/// <param name="Device">Which device.</param>
/// <param name="At">When by the device's clock, with offset.</param>
/// <param name="Action"><c>put</c> or <c>delete</c> of a whole document, <c>set</c> of fields.</param>
/// <param name="Proof">The document for <c>put</c>.</param>
/// <param name="Fields">What is written for <c>set</c>.</param>
/// <param name="Account">Account that was signed in on the device when it was kept; null for none. The office takes it from nobody else.</param>
/// <param name="Again">Whether it was sent before and an office put back to an older copy lost it: its author is who wrote it then.</param>
public sealed record Operation(
    Guid Id,
    string Kind,
    Guid DocumentId,
    string Author,
    string Device,
    DateTimeOffset At,
    string Action,
    ProofDocument? Proof,
    IReadOnlyList<FieldChange>? Fields = null,
    Guid? Account = null,
    bool Again = false
);
