namespace Rinsewright.Client.Parts;

/// <summary>Shape and colour of a status or an outcome: <c>good</c> circle, <c>near</c> triangle, <c>bad</c> square, <c>none</c> ring.</summary>
public static class StatusKind
{
    /// <summary>Of a reading's status.</summary>
    public static string Of(string status) =>
        status switch
        {
            "inRange" => "good",
            "nearLimit" or "open" => "near",
            "outOfRange" => "bad",
            _ => "none",
        };

    /// <summary>Of an outcome.</summary>
    public static string OfOutcome(string outcome) =>
        outcome switch
        {
            "proven" => "good",
            "notProven" => "bad",
            _ => "near",
        };
}
