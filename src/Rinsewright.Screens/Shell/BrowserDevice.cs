using Microsoft.JSInterop;

namespace Rinsewright.Client.Shell;

/// <summary>The browser as a device.</summary>
public sealed class BrowserDevice(IJSRuntime js) : IDevice, IDisposable
{
    private readonly ScriptModule module = new(js, "./js/device.js");
    private DotNetObjectReference<BrowserDevice>? self;

    /// <inheritdoc/>
    public event Func<string, Task>? Happened;

    /// <inheritdoc/>
    public Func<string?>? Leaving { get; set; }

    /// <summary>Called by the page that is closed.</summary>
    [JSInvokable]
    public string? OnLeaving() => Leaving?.Invoke();

    /// <inheritdoc/>
    public async Task ListenAsync()
    {
        if (self is null)
        {
            self = DotNetObjectReference.Create(this);
            await module.CallAsync("listen", self);
        }
    }

    /// <summary>Called by the page.</summary>
    [JSInvokable]
    public Task OnDevice(string what) => Happened?.Invoke(what) ?? Task.CompletedTask;

    /// <inheritdoc/>
    public Task<string?> ReadSettingsAsync() => module.GetAsync<string?>("settings");

    /// <inheritdoc/>
    public Task KeepSettingsAsync(string json) => module.CallAsync("keepSettings", json);

    /// <inheritdoc/>
    public Task<string> PreferredLanguageAsync() => module.GetAsync<string>("preferredLanguage");

    /// <inheritdoc/>
    public Task ApplyUpdateAsync() => module.CallAsync("applyUpdate");

    /// <inheritdoc/>
    public Task OfferAsync(byte[] bytes, string type, string name, bool view) => module.CallAsync("offer", bytes, type, name, view);

    /// <inheritdoc/>
    public Task<bool> CanShareAsync(string name) => module.GetAsync<bool>("canShare", name);

    /// <inheritdoc/>
    public Task ShareAsync(string name) => module.CallAsync("share", name);

    /// <inheritdoc/>
    public Task<StorageState> StorageAsync() => module.GetAsync<StorageState>("storage");

    /// <inheritdoc/>
    public Task<bool> AskToKeepAsync() => module.GetAsync<bool>("askToKeep");

    /// <inheritdoc/>
    public Task FocusAsync(string id) => module.CallAsync("focus", id);

    /// <inheritdoc/>
    public void Dispose() => self?.Dispose();
}
