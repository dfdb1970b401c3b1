using System.Text.Json;
using Microsoft.JSInterop;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client;

/// <summary>What pages that were closed had not written yet.</summary>
public static class LeftBehind
{
    /// <summary>Remembers a document of fields that is being written, for the page that is closed meanwhile.</summary>
    /// <param name="work">Documents.</param>
    /// <param name="kind">Kind of document.</param>
    /// <param name="id">Document.</param>
    /// <param name="changes">Path and text of all that is not written at the time it is asked.</param>
    public static void Remember(this Work work, string kind, Guid id, Func<IEnumerable<KeyValuePair<string, string>>> changes) =>
        work.Unwritten[id] = () =>
        {
            var left = work.Left(kind, id, null);
            return left with { Fields = [.. changes().Select(c => new FieldChange(c.Key, c.Value, left.At.ToUnixTimeMilliseconds()))] };
        };

    /// <summary>Writes what pages have left.</summary>
    public static async Task RegainAsync(IJSRuntime js, Work work)
    {
        var device = new ScriptModule(js, "./js/device.js");
        foreach (var left in await device.GetAsync<string[]>("left"))
        {
            if (await work.RegainAsync(left))
            {
                await device.CallAsync("regained", left);
            }
        }
    }

    /// <summary>Writes what a page has left, where nobody has written over it since.</summary>
    /// <returns>Whether it is written; not where the device takes nothing, or it waits for the account it was typed under.</returns>
    public static async Task<bool> RegainAsync(this Work work, string left)
    {
        try
        {
            foreach (var operation in JsonSerializer.Deserialize(left, ContractsJson.Default.IReadOnlyListOperation)!)
            {
                var id = operation.DocumentId;
                if (operation.Account != work.Left("", id, null).Account)
                {
                    return false;
                }

                if (operation.Proof is { } proof)
                {
                    await work.SaveAsync(proof with { Unjudged = true });
                    if (work.Trouble is not null)
                    {
                        return false;
                    }

                    continue;
                }

                if (operation.Kind == Kinds.Visit)
                {
                    await work.UnjudgedAsync(id);
                }

                var here = await work.OpenFieldsAsync(id);
                var (_, kept) = await work.TrySetAsync(
                    operation.Kind,
                    id,
                    [
                        .. operation
                            .Fields!.Where(f => !(here?.Fields.GetValueOrDefault(f.Path)?.Order > f.Order))
                            .Select(f => KeyValuePair.Create(f.Path, f.Value)),
                    ]
                );
                if (!kept)
                {
                    return false;
                }
            }

            return true;
        }
        catch (JSException)
        {
            return false; // the store cannot be opened: the page says so itself
        }
    }
}
