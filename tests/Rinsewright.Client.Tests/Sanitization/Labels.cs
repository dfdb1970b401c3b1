using Rinsewright.Client.Sanitization;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Tests.Sanitization;

/// <summary>Readings of an irreversible label.</summary>
internal static class Labels
{
    /// <summary>One that proves: printed for the limit, and its colour has changed.</summary>
    public static ProofRequest Reached(ProofRequest request) =>
        ReadingSlot.Label.Put(request, new ReadingDto("wareSurface", new AmountDto(160, "[degF]"), "irreversibleLabel", Reached: true));
}
