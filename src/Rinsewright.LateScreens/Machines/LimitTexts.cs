using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Client.Machines;

/// <summary>Limits in words, made once for each: they stay the same while a slider moves.</summary>
internal sealed class LimitTexts
{
    // Limits of a data plate are made anew with every move.
    private const int Most = 100;
    private readonly Dictionary<Limit, (string Text, string Citation)> known = [];
    private (string, UnitDisplay)? made;

    /// <summary>What a limit asks for, and where it stands.</summary>
    public (string Text, string Citation) Of(Limit limit, Voice voice)
    {
        if (made != (voice.Words.Language, voice.Units) || known.Count > Most)
        {
            known.Clear();
            made = (voice.Words.Language, voice.Units);
        }

        if (!known.TryGetValue(limit, out var words))
        {
            var wire = ProofReportMapping.Limit(limit);
            var printed = string.Join(" / ", wire.Printed.Select(voice.Words.Show));
            known[limit] = words = (
                $"{CheckWords.Upper(voice["measuring-point." + Voice.Kebab(wire.Point)])}, {voice["limit-sense." + wire.Sense]} {printed}",
                $"{voice["limit-force." + Voice.Kebab(wire.Force)]}: {voice.Words.Show(wire.Citation)}"
            );
        }

        return words;
    }
}
