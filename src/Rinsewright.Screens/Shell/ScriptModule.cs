using Microsoft.JSInterop;

namespace Rinsewright.Client.Shell;

/// <summary>One JavaScript module, loaded when first used and kept as long as the page.</summary>
public sealed class ScriptModule(IJSRuntime js, string path)
{
    private Task<IJSObjectReference>? loading;

    /// <summary>The module itself.</summary>
    public Task<IJSObjectReference> LoadAsync() => loading ??= js.InvokeAsync<IJSObjectReference>("import", path).AsTask();

    /// <summary>Calls a function of it.</summary>
    public async Task CallAsync(string name, params object?[] values) => await (await LoadAsync()).InvokeVoidAsync(name, values);

    /// <summary>Calls a function of it for its answer.</summary>
    public async Task<T> GetAsync<T>(string name, params object?[] values) => await (await LoadAsync()).InvokeAsync<T>(name, values);
}
