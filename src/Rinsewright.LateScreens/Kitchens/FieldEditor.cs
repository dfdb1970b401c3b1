using Rinsewright.Client.Records;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>A document of fields on the screen. What is typed is kept after a short pause, and before the page is left.</summary>
public sealed class FieldEditor(Work work, TimeProvider clock)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);
    private readonly Dictionary<string, string> typed = [];
    private int strokes;

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
    public async Task TypeAsync(string path, string text)
    {
        typed[path] = text;
        var mine = ++strokes;
        await Task.Delay(Pause, clock);
        if (mine == strokes)
        {
            await FlushAsync();
        }
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

    /// <summary>Writes what was typed.</summary>
    public async Task FlushAsync()
    {
        if (typed.Count == 0 || Document is not { } document)
        {
            return;
        }

        var now = typed.ToArray();
        Document = await work.SetAsync(document.Kind, document.Id, now);
        foreach (var (path, text) in now)
        {
            if (typed.TryGetValue(path, out var later) && later == text)
            {
                typed.Remove(path);
            }
        }

        Changed?.Invoke();
    }
}
