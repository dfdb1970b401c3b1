namespace Rinsewright.Client.Shell;

/// <summary>What the program asks of the device it runs on.</summary>
public interface IDevice
{
    /// <summary>Signal came or went, page seen or hidden, update ready: <c>online</c>, <c>offline</c>, <c>visible</c>, <c>hidden</c>, <c>update</c>.</summary>
    event Func<string, Task>? Happened;

    /// <summary>Asked when the page is closed: what it leaves to the next, null for nothing.</summary>
    Func<string?>? Leaving { get; set; }

    /// <summary>Starts telling what happens.</summary>
    Task ListenAsync();

    /// <summary>Settings kept here, as JSON; null on the first start.</summary>
    Task<string?> ReadSettingsAsync();

    /// <summary>Keeps the settings and applies theme and language to the page.</summary>
    Task KeepSettingsAsync(string json);

    /// <summary>Language the browser asks for, of those there are.</summary>
    Task<string> PreferredLanguageAsync();

    /// <summary>Takes the update that waits; the page loads again.</summary>
    Task ApplyUpdateAsync();

    /// <summary>Hands bytes to the person: a download, or a new tab to look at.</summary>
    Task OfferAsync(byte[] bytes, string type, string name, bool view);

    /// <summary>Whether what was handed over last, by this name, can go through the device's own share sheet.</summary>
    Task<bool> CanShareAsync(string name);

    /// <summary>Opens the share sheet with it, if by this name nothing else was handed over since; where the device refuses, it is handed over once more.</summary>
    Task ShareAsync(string name);

    /// <summary>How much is kept here and whether the browser promised not to clear it.</summary>
    Task<StorageState> StorageAsync();

    /// <summary>Asks the browser never to clear what is kept here.</summary>
    Task<bool> AskToKeepAsync();

    /// <summary>Moves the keyboard's place to an element.</summary>
    Task FocusAsync(string id);
}

/// <summary>Room on the device.</summary>
/// <param name="Kept">The browser promised not to clear it by itself.</param>
/// <param name="Usage">Bytes used.</param>
/// <param name="Quota">Bytes there may be.</param>
public sealed record StorageState(bool Kept, double Usage, double Quota);
