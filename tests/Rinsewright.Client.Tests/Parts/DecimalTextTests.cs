using Rinsewright.Client.Parts;
using Xunit;

namespace Rinsewright.Client.Tests.Parts;

/// <summary>Numbers as people type them; expected values written by hand.</summary>
public sealed class DecimalTextTests
{
    /// <summary>Point, comma, thousands, signs.</summary>
    [Theory]
    [InlineData("180", 180)]
    [InlineData("71,4", 71.4)]
    [InlineData("71.4", 71.4)]
    [InlineData(" 1 200 ", 1200)]
    [InlineData("1,200.5", 1200.5)]
    [InlineData("1.200,5", 1200.5)]
    [InlineData("1.200.000", 1200000)]
    [InlineData("−3,5", -3.5)]
    [InlineData(",5", 0.5)]
    [InlineData("0,125", 0.125)]
    public void A_number_is_read(string text, double expected) => Assert.Equal((DecimalReading.Number, expected), DecimalText.Read(text));

    /// <summary>One mark before exactly three digits can be either.</summary>
    [Theory]
    [InlineData("1,200")]
    [InlineData("1.200")]
    public void What_could_be_two_numbers_is_asked(string text) => Assert.Equal(DecimalReading.Unclear, DecimalText.Read(text).What);

    /// <summary>Words, units and nothing.</summary>
    [Theory]
    [InlineData("hot", DecimalReading.Unreadable)]
    [InlineData("180F", DecimalReading.Unreadable)]
    [InlineData("NaN", DecimalReading.Unreadable)]
    [InlineData("", DecimalReading.Empty)]
    [InlineData(null, DecimalReading.Empty)]
    public void What_is_no_number_is_said(string? text, DecimalReading expected) => Assert.Equal(expected, DecimalText.Read(text).What);

    /// <summary>A written number is read back the same in both languages.</summary>
    [Fact]
    public void What_is_written_is_read_back()
    {
        foreach (var value in new[] { 0.1, 71.4, 180, 160.55, -12.3 })
        {
            Assert.Equal(value, DecimalText.Read(DecimalText.Write(value, 2, "en")).Value);
            Assert.Equal(value, DecimalText.Read(DecimalText.Write(value, 2, "es")).Value);
        }
    }
}
