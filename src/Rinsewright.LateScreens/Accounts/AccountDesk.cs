using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.JSInterop;
using Rinsewright.Client.Records;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Accounts;

namespace Rinsewright.Client.Accounts;

/// <summary>What became of a question to the office about accounts.</summary>
/// <param name="Value">The answer; null where there was none or it was refused.</param>
/// <param name="Problem">Why not, in words; null where it went well.</param>
/// <param name="Status">HTTP status; 0 where the office could not be reached.</param>
public sealed record DeskAnswer<T>(T? Value, string? Problem, int Status)
    where T : class;

/// <summary>Asks the office about accounts, and remembers on this device who is signed in.</summary>
public sealed class AccountDesk(
    IJSRuntime js,
    Preferences preferences,
    IDeviceStore store,
    Work work,
    Synchronizer synchronizer,
    ProofSession session,
    TimeProvider clock
)
{
    private readonly ScriptModule module = new(js, "./js/account.js");

    /// <summary>Who is signed in; the device remembers it.</summary>
    public async Task<DeskAnswer<WhoAmI>> WhoAsync()
    {
        var answer = await AskAsync("GET", "me", AccountsJson.Default.WhoAmI);
        if (answer.Value?.Account is { } account)
        {
            await RememberAsync(account);
        }

        return answer;
    }

    /// <summary>Asks for something.</summary>
    public Task<DeskAnswer<T>> AskAsync<T>(string method, string path, JsonTypeInfo<T> answer)
        where T : class => SendAsync<object, T>(method, path, null, null, answer);

    /// <summary>Sends something and asks for an answer.</summary>
    public Task<DeskAnswer<T>> AskAsync<TBody, T>(string method, string path, TBody body, JsonTypeInfo<TBody> type, JsonTypeInfo<T> answer)
        where T : class => SendAsync(method, path, body, type, answer);

    /// <summary>Has something done that answers nothing: null where it went well, else why not in words.</summary>
    public async Task<string?> DoAsync(string method, string path) =>
        (await SendAsync<object, object>(method, path, null, null, null)).Problem;

    /// <summary>The same, sending something.</summary>
    public async Task<string?> DoAsync<TBody>(string method, string path, TBody body, JsonTypeInfo<TBody> type) =>
        (await SendAsync<TBody, object>(method, path, body, type, null)).Problem;

    /// <summary>Text of an answer that is no JSON; null where it was refused.</summary>
    public async Task<string?> TextAsync(string path)
    {
        var answer = await module.GetAsync<OfficeAnswer>("ask", "GET", "api/" + path, null, preferences.Language);
        return answer.Status == 200 ? answer.Text : null;
    }

    /// <summary>Takes in who has signed in on this device, and sends what waits.</summary>
    public async Task WelcomeAsync(AccountView account)
    {
        await RememberAsync(account);
        await synchronizer.RunAgainAsync();
    }

    /// <summary>Ends the session and removes the office's copies from this device; what waits stays. Null where it went well.</summary>
    public async Task<string?> LeaveAsync()
    {
        var answer = await SendAsync<object, object>("POST", "sign-out", null, null, null);
        if (answer.Problem is not null && answer.Status != 401) // ended already
        {
            return answer.Problem;
        }

        await session.CloseAsync(); // the next person does not find it open
        await store.ForgetAsync();
        await preferences.ChangeAsync(s => s with { Account = null, Role = "", Checked = null, Technician = "" });
        await work.CountAsync();
        await synchronizer.RunAsync();
        return null;
    }

    /// <summary>Whether a passkey can be used here: <c>yes</c>, <c>address</c>, <c>insecure</c> or <c>none</c>.</summary>
    public Task<string> PasskeysHereAsync() => module.GetAsync<string>("passkeysHere");

    /// <summary>Signs in with a passkey; null as problem and value where the person thought better of it.</summary>
    public async Task<DeskAnswer<WhoAmI>> PasskeySignInAsync()
    {
        var question = await AskAsync("POST", "sign-in/passkey/ask", AccountsJson.Default.PasskeyQuestion);
        if (question.Value is null)
        {
            return new(null, question.Problem, question.Status);
        }

        return await module.GetAsync<string?>("usePasskey", question.Value.Options) is { } credential
            ? await AskAsync(
                "POST",
                "sign-in/passkey",
                new PasskeyAnswer(credential),
                AccountsJson.Default.PasskeyAnswer,
                AccountsJson.Default.WhoAmI
            )
            : new(null, null, 0);
    }

    /// <summary>Adds a passkey to the account; null where it went well or the person thought better of it.</summary>
    public async Task<string?> AddPasskeyAsync(string name)
    {
        var question = await AskAsync("POST", "me/passkeys/ask", AccountsJson.Default.PasskeyQuestion);
        if (question.Value is null)
        {
            return question.Problem;
        }

        return await module.GetAsync<string?>("makePasskey", question.Value.Options) is { } credential
            ? await DoAsync("POST", "me/passkeys", new PasskeyAnswer(credential, name), AccountsJson.Default.PasskeyAnswer)
            : null;
    }

    /// <summary>Copies a text; false where the browser does not let it.</summary>
    public Task<bool> CopyAsync(string text) => module.GetAsync<bool>("copy", text);

    // A kitchen's account does not find on the device what somebody else had fetched to it.
    private async Task RememberAsync(AccountView account)
    {
        var settings = preferences.Settings;
        if (account.Role == Roles.Kitchen && (settings.Account != account.Id || settings.Role != account.Role))
        {
            await session.CloseAsync();
            await store.ForgetAsync();
        }

        await preferences.ChangeAsync(s =>
            s with
            {
                Account = account.Id,
                Role = account.Role,
                Technician = account.Name,
                Checked = clock.GetUtcNow(),
            }
        );
    }

    private async Task<DeskAnswer<T>> SendAsync<TBody, T>(
        string method,
        string path,
        TBody? body,
        JsonTypeInfo<TBody>? bodyType,
        JsonTypeInfo<T>? answerType
    )
        where T : class
    {
        var json = bodyType is null ? (method == "POST" ? "{}" : null) : JsonSerializer.Serialize(body!, bodyType);
        var answer = await module.GetAsync<OfficeAnswer>("ask", method, "api/" + path, json, preferences.Language);
        try
        {
            return answer.Status is >= 200 and < 300
                ? new(answerType is null ? null : JsonSerializer.Deserialize(answer.Text, answerType), null, answer.Status)
                : new(null, Problem(answer), answer.Status);
        }
        catch (JsonException)
        {
            return new(null, preferences.Words["account.away"], 0); // something answered that is not the office
        }
    }

    private string Problem(OfficeAnswer answer)
    {
        if (answer.Status == 0)
        {
            return preferences.Words["account.away"];
        }

        using var document = JsonDocument.Parse(answer.Text);
        return document.RootElement.TryGetProperty("detail", out var detail) ? detail.GetString() ?? "" : preferences.Words["account.away"];
    }
}
