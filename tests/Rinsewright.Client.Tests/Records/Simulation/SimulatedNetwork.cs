using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>The way to the office from one tab: what goes may not arrive, arrive late, or twice; what comes back likewise.</summary>
internal sealed class SimulatedNetwork(World world, SimulatedOffice office, Device device, ProgramVersion program, Func<bool> alive)
    : IOffice
{
    private const double Lost = 0.2;
    private const double Doubled = 0.2;
    private static readonly OfficeAnswer Nothing = new(0, "");

    public async Task<OfficeAnswer> SendAsync(string operationsJson, string language)
    {
        var operations = JsonSerializer.Deserialize(program.Written(operationsJson), ContractsJson.Default.IReadOnlyListOperation)!;
        await world.StopAsync(alive);
        if (DoesNotArrive())
        {
            return Nothing;
        }

        if (world.Troubled && world.Random.NextDouble() < Doubled)
        {
            _ = LaterAsync(operations); // a copy that arrives whenever, also after what was sent later
        }

        var results = office.Receive(operations);
        await world.StopAsync(alive);
        if (results is null || Loses())
        {
            return Nothing;
        }

        world.Acknowledged.UnionWith(results.Results.Where(r => r.Outcome != "refused").Select(r => r.Id));
        return new OfficeAnswer(200, JsonSerializer.Serialize(results, ContractsJson.Default.OperationResults));
    }

    public async Task<OfficeAnswer> ChangesAsync(string cursor, string seen)
    {
        await world.StopAsync(alive);
        if (DoesNotArrive())
        {
            return Nothing;
        }

        var changes = JsonSerializer.Serialize(office.ChangesAfter(cursor, seen), ContractsJson.Default.Changes);
        await world.StopAsync(alive);
        return Loses() ? Nothing : new OfficeAnswer(200, program.Read(changes));
    }

    public async Task<int> SendFileAsync(string sha256)
    {
        await world.StopAsync(alive);
        if (DoesNotArrive())
        {
            return 0;
        }

        world.Told?.Invoke($"file {sha256[..4]} comes from {device.Author}");
        var answered = office.ReceiveFile(sha256);
        await world.StopAsync(alive);
        if (!answered || Loses())
        {
            return 0;
        }

        device.Kept.FileSent(sha256);
        return 201;
    }

    public Task<OfficeAnswer> HistoryAsync(Guid id) => Task.FromResult(Nothing);

    // Nobody is there to take it; an answer that was on its way already still comes.
    private bool DoesNotArrive() => office.Away || Loses();

    private bool Loses() => device.Away || (world.Troubled && world.Random.NextDouble() < Lost);

    private async Task LaterAsync(IReadOnlyList<Operation> operations)
    {
        await world.StopAsync(() => true);
        await world.StopAsync(() => true);
        if (!office.Away)
        {
            office.Receive(operations);
        }
    }
}
