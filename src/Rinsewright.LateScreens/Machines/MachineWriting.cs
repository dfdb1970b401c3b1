using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>Keeps the machine on the screen: one write at a time and always the latest, so that a slow device never keeps the earlier one last.</summary>
public sealed class MachineWriting(MachineShelf shelf)
{
    private (Guid Id, Machine Machine)? latest;
    private Task writing = Task.CompletedTask;

    /// <summary>Keeps a machine.</summary>
    /// <returns>Done when it, or a later one, is kept.</returns>
    public Task WriteAsync(Guid id, Machine machine)
    {
        latest = (id, machine);
        return writing.IsCompleted ? writing = WriteLatestAsync() : writing;
    }

    private async Task WriteLatestAsync()
    {
        while (latest is (var id, var machine))
        {
            latest = null;
            await shelf.SaveAsync(id, machine);
        }
    }
}
