using System.Text.Json;
using Microsoft.JSInterop;
using Rinsewright.Client.Shell;

namespace Rinsewright.Client.Machines;

/// <summary>Machines are run in the compute worker.</summary>
public sealed class BrowserModelling(IJSRuntime js) : IModelling
{
    private readonly ScriptModule module = new(js, "./js/compute.js");

    /// <inheritdoc/>
    public async Task<ModelAnswer> RunAsync(ModelAsk ask)
    {
        var json = await module.GetAsync<string>("machine", JsonSerializer.Serialize(ask, ClientJson.Default.ModelAsk));
        return JsonSerializer.Deserialize(json, ClientJson.Default.ModelAnswer) ?? new ModelAnswer([], json);
    }
}
