using System.Reflection;
using Microsoft.AspNetCore.Components;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Visits;
using Xunit;

namespace Rinsewright.Client.Tests.Shell;

/// <summary>Which screens are there from the start and which are fetched.</summary>
public sealed class LatePartsTests
{
    /// <summary>A late screen whose address is taken for one of the first is never found where the program starts on it; fetching the late ones for a first one keeps the first page waiting.</summary>
    [Fact]
    public void Every_address_is_fetched_from_where_its_screen_is()
    {
        Assert.All(Addresses(typeof(VisitWork).Assembly), a => Assert.True(LateParts.HasScreen(a), a));
        Assert.All(Addresses(typeof(LateParts).Assembly), a => Assert.False(LateParts.HasScreen(a), a));
        Assert.True(LateParts.HasScreen("no-such-screen"));
    }

    private static List<string> Addresses(Assembly assembly)
    {
        var found = assembly
            .GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => r.Template.Split('/')[1])
            .ToList();
        Assert.NotEmpty(found);
        return found;
    }
}
