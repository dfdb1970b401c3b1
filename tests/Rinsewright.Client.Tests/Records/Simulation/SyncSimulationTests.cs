using System.Collections.Concurrent;
using Xunit;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>
/// Ten thousand invented histories, or as many as one likes: up to four devices with up to two tabs each and one office; kitchens, a machine, a visit, and proofs with their loggers' files; clocks that
/// are minutes to years off, requests and answers that are lost, late, doubled and out of order, no signal for a while, tabs that die between any two steps, an office that dies over what it takes in,
/// before it has committed it or after, an office put back to an older copy, and devices that run an earlier program until they take the later one. Whatever happens: what was saved reaches the office
/// once, nothing arrives that nobody saved, every device ends with the same, what stands is the latest with every other value in the history, a proof keeps what an earlier program does not know, and
/// its files are at the office. Each history follows from its seed; a failure names it. Where the office was put back, what was lost there comes back from the devices: the latest of every field stands
/// again. Bugs are planted one at a time below (<see cref="Planted"/>), in the office, in what a device keeps, in how it sends and in what an earlier program reads, and each is caught; without them
/// nothing is.
/// </summary>
[Collection("Browser")] // it takes every core: beside it a page would wait for minutes
public sealed class SyncSimulationTests
{
    // More at night: the variable says how many.
    private static readonly int Lives = int.TryParse(Environment.GetEnvironmentVariable("RINSEWRIGHT_HISTORIES"), out var asked)
        ? asked
        : 10_000;

    // A planted bug shows in far fewer.
    private static readonly int Hunts = Math.Min(Lives, 1000);

    [Fact]
    public void Nothing_saved_is_lost_or_doubled_and_all_come_to_the_same()
    {
        var broken = new ConcurrentDictionary<int, string>();
        var (before, after) = (0, 0);
        Parallel.For(
            1,
            Lives + 1,
            (seed, loop) =>
            {
                if (Live(seed, Planted.None, ended: Count) is { } how)
                {
                    broken[seed] = how;
                    loop.Break();
                }
            }
        );
        Assert.True(broken.IsEmpty, broken.IsEmpty ? "" : $"history {broken.Keys.Min()}: {broken[broken.Keys.Min()]}");
        Assert.True(
            Math.Min(before, after) > Lives / 10,
            $"The office died {before} times before it had committed and {after} times after."
        );

        void Count(SimulatedOffice office)
        {
            Interlocked.Add(ref before, office.DiedBeforeCommit);
            Interlocked.Add(ref after, office.DiedAfterCommit);
        }
    }

    [Theory]
    [InlineData(Planted.AppliesTwice)]
    [InlineData(Planted.ForgetsBeforeTheAnswer)]
    [InlineData(Planted.LastArrivalStands)]
    [InlineData(Planted.WritesOverAnotherTab)]
    [InlineData(Planted.ReplacesWhatIsOnItsWay)]
    [InlineData(Planted.SkipsChanges)]
    [InlineData(Planted.HidesThatItWasRestored)]
    [InlineData(Planted.DropsWhatItDoesNotKnow)]
    [InlineData(Planted.NeverAsksForLostFiles)]
    [InlineData(Planted.AnswersBeforeItCommits)]
    public void A_planted_bug_is_caught(Planted bug) => Assert.Contains(Enumerable.Range(1, Hunts), seed => Live(seed, bug) is not null);

    [Fact]
    public void A_history_follows_from_its_seed() => Assert.Equal(Trace(17), Trace(17));

    /// <summary>Tells one history, to find out what happened: <c>RINSEWRIGHT_HISTORY=17 … -explicit only -method "*One_history_is_told"</c>.</summary>
    [Fact(Explicit = true)]
    public void One_history_is_told()
    {
        var seed = int.Parse(
            Environment.GetEnvironmentVariable("RINSEWRIGHT_HISTORY") ?? "1",
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.Null(Live(seed, Planted.None, TestContext.Current.TestOutputHelper!.WriteLine));
    }

    private static string Trace(int seed)
    {
        using var world = new World(seed, Planted.None);
        var office = new SimulatedOffice(world);
        Histories.Happen(world, office);
        return string.Join(
            '\n',
            office.Documents.Values.Select(d =>
                d.Document is { } document ? SimulatedOffice.Text(document) : $"{d.Writer!.Id} {d.Writer.Proof?.Kitchen}"
            )
        );
    }

    // What is broken; null where nothing is.
    private static string? Live(int seed, Planted bug, Action<string>? told = null, Action<SimulatedOffice>? ended = null)
    {
        using var world = new World(seed, bug) { Told = told };
        var office = new SimulatedOffice(world);
        try
        {
            var devices = Histories.Happen(world, office);
            ended?.Invoke(office);
            return Promises.Broken(world, office, devices);
        }
        catch (BrokenException e)
        {
            return e.Message;
        }
    }
}
