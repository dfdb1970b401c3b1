using System.Runtime.InteropServices;

namespace Rinsewright.Drawing.Section;

/// <summary>A flag that wants room.</summary>
/// <param name="Key">Part or flow it belongs to.</param>
/// <param name="X">Pole, px.</param>
/// <param name="Width">Width of its words, px.</param>
/// <param name="Rank">The lower, the sooner it finds room; below 0 it must be seen.</param>
internal sealed record FlagWish(string Key, double X, double Width, double Rank);

/// <summary>Where a flag stands.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FlagPlace(FlagWish Wish, int Row, double From, double To);

/// <summary>
/// Sets flags: a word on a straight pole above or below its part, in the nearest row where it touches no word and no pole. Some orders are tried and
/// the fullest is kept; always the same ones, so that the same drawing comes out.
/// </summary>
internal static class FlagLayout
{
    private const int Orders = 60;
    private const double Between = 7;
    private const double Clear = 4;
    private const double PolesApart = 6;

    public static List<FlagPlace> Set(IReadOnlyList<FlagWish> wishes, double width, int rows)
    {
        List<FlagPlace> best = [];
        var bestWorth = double.NegativeInfinity;
        var seed = 7u;
        double Next()
        {
            seed = (seed * 1664525u) + 1013904223u;
            return (seed >> 8) / (double)(1 << 24);
        }

        for (var n = 0; n < Orders; n++)
        {
            var order = wishes
                .Select(w =>
                    (
                        Wish: w,
                        Turn: w.Rank < 0 ? w.Rank - 20 + Next()
                        : n == 0 ? w.Rank
                        : Turn(w, n, Next())
                    )
                )
                .OrderBy(w => w.Turn)
                .Select(w => w.Wish);
            // What must be seen tries other rows and the other side of its pole too.
            var placed = Lay(order, width, rows, w => n > 0 && w.Rank < 0 ? (int)(Next() * rows * 2) : 0);
            var worth = placed.Sum(p => (p.Wish.Rank < 0 ? 60 : 11 - p.Wish.Rank) - (p.Row * 0.2));
            if (worth > bestWorth)
            {
                (best, bestWorth) = (placed, worth);
            }

            if (placed.Count == wishes.Count && n > 3)
            {
                break;
            }
        }

        return best;

        double Turn(FlagWish w, int n, double chance) =>
            (n % 3) switch
            {
                0 => w.Rank + (chance * 3),
                1 => chance * 6,
                _ => (chance * 6) - (w.X / width * 8),
            };
    }

    private static List<FlagPlace> Lay(IEnumerable<FlagWish> order, double width, int rows, Func<FlagWish, int> first)
    {
        List<FlagPlace> placed = [];
        foreach (var wish in order)
        {
            if (Find(placed, wish, width, rows, first(wish)) is { } place)
            {
                placed.Add(place);
            }
        }

        return placed;
    }

    private static FlagPlace? Find(List<FlagPlace> placed, FlagWish wish, double width, int rows, int first)
    {
        for (var n = 0; n < rows * 2; n++)
        {
            var place = (n + first) % (rows * 2);
            var from = place % 2 == 0 ? wish.X : wish.X - wish.Width;
            var flag = new FlagPlace(wish, place / 2, from, from + wish.Width);
            if (flag.From >= 2 && flag.To <= width - 2 && !Meets(placed, flag))
            {
                return flag;
            }
        }

        return null;
    }

    // Row 0 lies next to the drawing: a flag in a further row sends its pole past the nearer ones.
    private static bool Meets(List<FlagPlace> placed, FlagPlace place)
    {
        var x = place.Wish.X;
        foreach (var k in placed)
        {
            if (
                Math.Abs(k.Wish.X - x) < PolesApart
                || (k.Row == place.Row && place.From < k.To + Between && place.To > k.From - Between)
                || (k.Row > place.Row && k.Wish.X > place.From - Clear && k.Wish.X < place.To + Clear)
                || (k.Row < place.Row && x > k.From - Clear && x < k.To + Clear)
            )
            {
                return true;
            }
        }

        return false;
    }
}
