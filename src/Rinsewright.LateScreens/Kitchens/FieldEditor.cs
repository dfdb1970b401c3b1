using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>A document of fields on the screen. What is typed is kept at once; what is typed while the device still writes goes with the next write.</summary>
public sealed class FieldEditor(Work work)
{
    private readonly Dictionary<string, string> typed = [];
    private Task writing = Task.CompletedTask;

    /// <summary>The document as it is kept here; null before it is opened or where there is none.</summary>
    public FieldDocument? Document { get; private set; }

    /// <summary>It was written.</summary>
    public event Action? Changed;

    /// <summary>Opens a document; what is being typed stays.</summary>
    public async Task OpenAsync(Guid id)
    {
        if (Document is not null && Document.Id != id)
        {
            await FlushAsync();
        }

        Document = await work.OpenFieldsAsync(id);
    }

    /// <summary>Text of a field, as typed.</summary>
    public string this[string path] => typed.TryGetValue(path, out var text) ? text : Document?[path] ?? "";

    /// <summary>What somebody else wrote meanwhile; null where nobody did or it is the same.</summary>
    public FieldValue? Other(string path) =>
        Document?.Fields.TryGetValue(path, out var field) == true && field.Other is { } other && other.Value != field.Value ? other : null;

    /// <summary>Types into a field.</summary>
    /// <returns>Done when it is kept.</returns>
    public Task TypeAsync(string path, string text)
    {
        typed[path] = text;
        return writing.IsCompleted ? writing = WriteAllAsync() : writing;
    }

    /// <summary>Writes fields at once.</summary>
    public async Task WriteAsync(params KeyValuePair<string, string>[] changes)
    {
        foreach (var (path, text) in changes)
        {
            typed[path] = text;
        }

        await FlushAsync();
    }

    private async Task WriteAllAsync()
    {
        while (typed.Count > 0 && Document is not null && await FlushAsync())
        {
            // what was typed while it wrote
        }
    }

    /// <summary>Writes what was typed; what the device does not take stays typed, for the next time.</summary>
    /// <returns>Whether it was taken.</returns>
    public async Task<bool> FlushAsync()
    {
        if (typed.Count == 0 || Document is not { } document)
        {
            return true;
        }

        work.Remember(document.Kind, document.Id, () => typed);
        var now = typed.ToArray();
        var (written, isKept) = await work.TrySetAsync(document.Kind, document.Id, now);
        if (!isKept)
        {
            Changed?.Invoke();
            return false;
        }

        Document = written;
        foreach (var (path, text) in now)
        {
            if (typed.TryGetValue(path, out var later) && later == text)
            {
                typed.Remove(path);
            }
        }

        if (typed.Count == 0)
        {
            work.Unwritten.Remove(document.Id);
        }

        Changed?.Invoke();
        return true;
    }
}
