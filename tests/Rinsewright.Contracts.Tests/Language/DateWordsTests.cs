using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Records;
using Xunit;

namespace Rinsewright.Contracts.Tests.Language;

/// <summary>Days and times as people read them. The month is a word: 03/04 is a day in March on one side of a border and in April on the other.</summary>
public sealed class DateWordsTests
{
    private const string English = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec";
    private const string Spanish = "ene feb mar abr may jun jul ago sep oct nov dic";

    [Theory]
    [InlineData("en", "28 Nov 2026", "28 Nov", "Nov 2026")]
    [InlineData("es", "28 nov 2026", "28 nov", "nov 2026")]
    public void A_day_is_written_with_its_month_as_a_word(string language, string day, string ofYear, string month)
    {
        var (words, on) = (Words.For(language), new DateOnly(2026, 11, 28));

        Assert.Equal(day, Plain(words.Day(on)));
        Assert.Equal(ofYear, Plain(words.DayOfYear(on)));
        Assert.Equal(month, Plain(words.MonthOfYear(on)));
        Assert.DoesNotContain(' ', words.Day(on)); // a line never breaks inside a day
    }

    [Theory]
    [InlineData("en", English)]
    [InlineData("es", Spanish)]
    public void Every_month_has_its_own_word(string language, string months)
    {
        var said = Enumerable.Range(1, 12).Select(m => Plain(Words.For(language).Day(new DateOnly(2027, m, 3))));

        Assert.Equal(months.Split(' ').Select(m => $"3 {m} 2027"), said);
    }

    [Theory]
    [InlineData("en", "3 Apr 2027 07:05", "3 Apr 2027 07:05 UTC−07:00", "3 Apr 2027 07:05 UTC")]
    [InlineData("es", "3 abr 2027 07:05", "3 abr 2027 07:05 UTC−07:00", "3 abr 2027 07:05 UTC")]
    public void A_time_is_that_of_the_clock_where_it_was_written(string language, string moment, string zone, string universal)
    {
        var words = Words.For(language);
        var at = new DateTimeOffset(2027, 4, 3, 7, 5, 59, TimeSpan.FromHours(-7));

        Assert.Equal(moment, Plain(words.Moment(at)));
        Assert.Equal(zone, Plain(words.MomentAndZone(at)));
        Assert.Equal(universal, Plain(words.MomentAndZone(new DateTimeOffset(at.DateTime, TimeSpan.Zero))));
        Assert.Equal("07:05", Words.Clock(at));
    }

    /// <summary>The engine gives the day itself: JSON keeps it in figures, people get it in words.</summary>
    [Theory]
    [InlineData("en", "28 Nov 2026")]
    [InlineData("es", "28 nov 2026")]
    public void A_day_in_a_statement_is_said_in_the_language_and_travels_in_figures(string language, string day)
    {
        var statement = Wire.From(Statement.Of("proof.expired", ("date", new DateOnly(2026, 11, 28))));

        Assert.Contains(day, Plain(Words.For(language).Say(statement)), StringComparison.Ordinal);
        Assert.Contains(
            """{"name":"date","date":"2026-11-28"}""",
            System.Text.Json.JsonSerializer.Serialize(statement, ContractsJson.Default.Options),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("en", "28 Nov 2026 14:05:09")]
    [InlineData("es", "28 nov 2026 14:05:09")]
    public void A_sample_is_told_to_the_second(string language, string second) =>
        Assert.Equal(second, Plain(Words.For(language).Second(new DateTime(2026, 11, 28, 14, 5, 9, DateTimeKind.Unspecified))));

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
