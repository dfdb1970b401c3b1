namespace Rinsewright.Contracts.Records;

/// <summary>Whether an operation that writes fields can be kept.</summary>
public static class FieldCheck
{
    /// <summary>Most fields in one operation.</summary>
    public const int MostFields = 400;

    /// <summary>Longest path, characters.</summary>
    public const int LongestPath = 120;

    /// <summary>Longest text of a field, characters: a whole machine file with room.</summary>
    public const int LongestValue = 400_000;

    /// <summary>Latest place in the order, the end of the year 9999, milliseconds.</summary>
    public const long LatestOrder = 253_402_300_799_999;

    /// <summary>Word key of what is wrong; null where it can be kept.</summary>
    public static string? Fault(Operation operation)
    {
        if (operation.Action != "set")
        {
            return "server.operation.set";
        }

        if (operation.Proof is not null)
        {
            return "server.operation.fields-only";
        }

        if (operation.Fields is not { Count: > 0 and <= MostFields } fields)
        {
            return "server.operation.no-fields";
        }

        var paths = new HashSet<string>();
        foreach (var field in fields)
        {
            if (!IsPath(field.Path) || !paths.Add(field.Path))
            {
                return "server.operation.path";
            }

            if (field.Value.Length > LongestValue || HasControl(field.Value))
            {
                return "server.operation.value";
            }

            if (field.Order is < 1 or > LatestOrder || field.OverOrder < 0 || field.OverOrder >= field.Order)
            {
                return "server.operation.order";
            }
        }

        return null;
    }

    // All of char.IsControl but tab and the ends of lines, range by range: a value can be long.
    private static bool HasControl(ReadOnlySpan<char> value) =>
        value.ContainsAnyInRange('\0', '\b')
        || value.ContainsAnyInRange('\v', '\f')
        || value.ContainsAnyInRange('\x0e', '\x1f')
        || value.ContainsAnyInRange('\x7f', '\x9f');

    /// <summary>Whether a text names a field: letters, digits and hyphens, parts with a dot between them.</summary>
    public static bool IsPath(string path) =>
        path.Length is > 0 and <= LongestPath
        && path.Split('.').All(part => part.Length > 0 && part.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'));
}
