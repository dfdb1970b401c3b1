using System.Text.Json.Serialization;

namespace Rinsewright.Client.Kitchens;

/// <summary>The day as it was read last, for the first moments of the next start (js/first.js draws it until the program has started). Days further ahead than are shown are in it, because time goes on.</summary>
/// <param name="Language">Language of its words.</param>
/// <param name="Ahead">Days ahead that are shown.</param>
/// <param name="Words">Words it is drawn with, by name.</param>
/// <param name="Todo">What is due, the earliest first.</param>
/// <param name="Failed">Machines that failed or must not be used.</param>
public sealed record DayKept(
    string Language,
    int Ahead,
    IReadOnlyDictionary<string, string> Words,
    IReadOnlyList<DayKept.Item> Todo,
    IReadOnlyList<DayKept.Machine> Failed
)
{
    /// <summary>Version of what is kept; another is not drawn.</summary>
    public int Version { get; } = 2;

    /// <summary>Something due; <c>Day</c> as <c>2026-12-03</c>, null for none; <c>Take</c> what to take along, null for nothing.</summary>
    public sealed record Item(string? Day, string Address, string Kitchen, string What, IReadOnlyList<TakeAlong>? Take);

    /// <summary>A machine with the word of how it stands.</summary>
    public sealed record Machine(string Address, string Kitchen, string Name, string Word);
}

/// <summary>JSON of the day that is kept.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull
)]
[JsonSerializable(typeof(DayKept))]
internal sealed partial class DayJson : JsonSerializerContext;
