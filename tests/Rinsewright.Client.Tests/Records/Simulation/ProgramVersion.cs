using System.Text.RegularExpressions;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>
/// Which program a tab runs. The later one is today's. The earlier one is today's too, but does not know a proof's note: whatever it reads has that under a name it
/// never heard of, and whatever it writes has it back. So what it does not know is lost wherever the real program would lose it.
/// </summary>
internal sealed partial class ProgramVersion(World world, bool old)
{
    /// <summary>Latest schema version of a proof it knows.</summary>
    public int Newest => old ? 1 : 2;

    /// <summary>A text as this program reads it.</summary>
    public string Read(string text) =>
        !old ? text
        : world.Bug == Planted.DropsWhatItDoesNotKnow ? Note().Replace(text, "")
        : text.Replace("\"note\":\"", "\"unheardOf\":\"", StringComparison.Ordinal);

    /// <summary>A text that this program wrote, as everybody else has it.</summary>
    public string Written(string text) => old ? text.Replace("\"unheardOf\":\"", "\"note\":\"", StringComparison.Ordinal) : text;

    [GeneratedRegex(@",""note"":""[^""]*""", RegexOptions.None, 1000)]
    private static partial Regex Note();
}
