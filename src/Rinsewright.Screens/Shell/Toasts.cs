namespace Rinsewright.Client.Shell;

/// <summary>What was done, with the way back.</summary>
/// <param name="Text">What was done.</param>
/// <param name="Undo">Takes it back; null where there is nothing to take back.</param>
public sealed record Toast(string Text, Func<Task>? Undo);

/// <summary>The one toast shown; the next takes its place.</summary>
public sealed class Toasts
{
    /// <summary>How long a toast stays.</summary>
    public static readonly TimeSpan Stay = TimeSpan.FromSeconds(10);

    /// <summary>A toast came or went.</summary>
    public event Action? Changed;

    /// <summary>The toast shown; null for none.</summary>
    public Toast? Current { get; private set; }

    /// <summary>Shows a toast for a while.</summary>
    public void Show(string text, Func<Task>? undo = null)
    {
        var toast = new Toast(text, undo);
        Current = toast;
        Changed?.Invoke();
        _ = LeaveAsync(toast);
    }

    /// <summary>Takes the toast's action back.</summary>
    public async Task UndoAsync()
    {
        var undo = Current?.Undo;
        Dismiss();
        if (undo is not null)
        {
            await undo();
        }
    }

    /// <summary>Puts it away.</summary>
    public void Dismiss()
    {
        Current = null;
        Changed?.Invoke();
    }

    private async Task LeaveAsync(Toast toast)
    {
        await Task.Delay(Stay);
        if (ReferenceEquals(Current, toast))
        {
            Dismiss();
        }
    }
}
