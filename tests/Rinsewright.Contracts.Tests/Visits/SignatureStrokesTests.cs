using Rinsewright.Contracts.Visits;
using Xunit;

namespace Rinsewright.Contracts.Tests.Visits;

/// <summary>Signatures drawn with a finger.</summary>
public sealed class SignatureStrokesTests
{
    [Fact]
    public void What_is_drawn_comes_back()
    {
        IReadOnlyList<(int, int)>[] strokes =
        [
            [(10, 80), (14, 60), (20, 75)],
            [(40, 40), (41, 90)],
        ];
        var text = SignatureStrokes.Write(strokes);

        Assert.Equal("10,80 14,60 20,75;40,40 41,90", text);
        Assert.Equal(strokes, SignatureStrokes.Read(text, "s"));
    }

    [Fact]
    public void A_stroke_that_runs_off_the_pad_ends_at_its_edge() =>
        Assert.Equal(
            "0,0 300,110",
            SignatureStrokes.Write([
                [(-5, -1), (999, 400)],
            ])
        );

    [Theory]
    [InlineData("10,80 14")]
    [InlineData("10,80 14,-3")]
    [InlineData("10,80 301,3")]
    [InlineData("x,y")]
    [InlineData("1.5,3")]
    public void What_is_no_signature_says_where_and_what(string text)
    {
        var refused = Assert.Throws<ContractException>(() => SignatureStrokes.Read(text, "signatures[0].strokes"));

        Assert.Equal("signatures[0].strokes", refused.Field);
        Assert.Contains("10,80", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flood_of_points_is_refused() =>
        Assert.Throws<ContractException>(() => SignatureStrokes.Read(string.Join(' ', Enumerable.Repeat("1,1", 5000)), "s"));
}
