using System.Reflection;
using Xunit.Sdk;
using Xunit.v3;

namespace Rinsewright.Server.Tests;

/// <summary>
/// What touches data runs on both databases: a server is made only for a test that is given its database (<see cref="TestServer.MakeAsync"/> looks), and
/// such a test is given each.
/// </summary>
public sealed class BothDatabasesTests
{
    [Fact]
    public void Every_test_that_is_given_its_database_is_given_both()
    {
        var tests = typeof(BothDatabasesTests).Assembly.GetTypes().SelectMany(t => t.GetMethods()).Where(IsGivenItsDatabase).ToList();
        Assert.True(tests.Count > 50, $"{tests.Count} tests");
        Assert.Empty(tests.Where(t => Given(t).Distinct().Count() < Enum.GetValues<Database>().Length).Select(t => t.Name));
    }

    [Fact]
    public async Task No_server_is_made_for_a_test_that_names_one_database()
    {
        var e = await Assert.ThrowsAnyAsync<XunitException>(() => TestServer.MakeAsync(Database.Sqlite));
        Assert.Contains(nameof(No_server_is_made_for_a_test_that_names_one_database), e.Message, StringComparison.Ordinal);
    }

    /// <summary>Whether a test runs on the database it is given.</summary>
    public static bool IsGivenItsDatabase(MethodInfo test) =>
        test.IsDefined(typeof(FactAttribute)) && test.GetParameters() is [var first, ..] && first.ParameterType == typeof(Database);

    private static IEnumerable<Database> Given(MethodInfo test) =>
        test.GetCustomAttributes<DataAttribute>()
            .SelectMany(a =>
                a switch
                {
                    InlineDataAttribute inline => [(Database)inline.Data[0]!],
                    OnBothAttribute => Enum.GetValues<Database>(),
                    _ => [],
                }
            );
}
