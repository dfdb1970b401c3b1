using System.Globalization;
using Rinsewright.Contracts.Sanitization;

namespace Rinsewright.Client.Sanitization;

/// <summary>Turns another choice for one of the reader's decisions into what is asked of it.</summary>
public static class DecisionChange
{
    /// <summary>Whether a decision can be changed here.</summary>
    public static bool CanApply(string id) =>
        Column(id) is { } column
            ? column.Field is "unit" or "role" or "name"
            : id
                is "encoding"
                    or "separator"
                    or "decimal-mark"
                    or "date-order"
                    or "utc-offset"
                    or "heading"
                    or "header-line"
                    or "unit"
                    or "sheet";

    /// <summary>The request with the decision given.</summary>
    public static ProofRequest Apply(ProofRequest request, string id, string value)
    {
        if (Column(id) is { } column)
        {
            return Channel(
                request,
                column.Index,
                c =>
                    column.Field switch
                    {
                        "unit" => c with { Unit = value },
                        "role" => c with { Role = value },
                        _ => c with { Name = value },
                    }
            );
        }

        var dialect = request.Dialect ?? new DialectOverrides();
        return request with
        {
            Dialect = id switch
            {
                "encoding" => dialect with { Encoding = value },
                "separator" => dialect with { Separator = value },
                "decimal-mark" => dialect with { DecimalMark = value },
                "date-order" => dialect with { DateOrder = value },
                "utc-offset" => dialect with { UtcOffset = value },
                "heading" or "header-line" => dialect with
                {
                    HeaderLine = int.Parse(value, NumberStyles.Integer, CultureInfo.InvariantCulture),
                },
                "unit" => dialect with { Unit = value },
                "sheet" => dialect with { Sheet = value },
                _ => dialect,
            },
        };
    }

    /// <summary>The request with one column changed.</summary>
    public static ProofRequest Channel(ProofRequest request, int index, Func<ChannelOverride, ChannelOverride> change)
    {
        var channels = (request.Channels ?? []).ToList();
        var at = channels.FindIndex(c => c.Index == index);
        if (at < 0)
        {
            channels.Add(new ChannelOverride(index));
            at = channels.Count - 1;
        }

        channels[at] = change(channels[at]);
        return request with { Channels = channels };
    }

    private static (string Field, int Index)? Column(string id) => DecisionWords.Column(id);
}
