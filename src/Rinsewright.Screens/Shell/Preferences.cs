using System.Text.Json;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Shell;

/// <summary>
/// What this device remembers of its person: also the account that was signed in last, its role, and when the server last said so, for the time without a signal. Theme: <c>system</c>, <c>light</c>, <c>dark</c>. Units: <c>asRead</c>, <c>us</c>, <c>si</c>. Paper: <c>letter</c>, <c>a4</c>.
/// </summary>
public sealed record DeviceSettings(
    string Theme = "system",
    string? Language = null,
    string Units = "asRead",
    string Paper = "letter",
    string Technician = "",
    string Device = "",
    Guid? Account = null,
    string Role = "",
    DateTimeOffset? Checked = null
);

/// <summary>The settings in use, and the words and units that follow from them. Every change is kept at once.</summary>
public sealed class Preferences(IDevice device)
{
    /// <summary>Something changed; what is shown is to be drawn again.</summary>
    public event Action? Changed;

    /// <summary>The settings.</summary>
    public DeviceSettings Settings { get; private set; } = new(Language: "en");

    /// <summary>Whether who is signed in may change anything: a kitchen's account only looks.</summary>
    public bool MayWrite => Settings.Role != Contracts.Accounts.Roles.Kitchen;

    /// <summary>Language shown.</summary>
    public string Language => Settings.Language ?? "en";

    /// <summary>Words in that language.</summary>
    public Words Words => Words.For(Language);

    /// <summary>Units shown.</summary>
    public UnitDisplay Units =>
        Settings.Units switch
        {
            "us" => UnitDisplay.Us,
            "si" => UnitDisplay.Si,
            _ => UnitDisplay.AsRead,
        };

    /// <summary>Words and units together.</summary>
    public Voice Voice => new(Words, Units);

    /// <summary>Reads what is kept. A device that never was used gets the browser's language and a name of its own.</summary>
    public async Task LoadAsync()
    {
        var json = await device.ReadSettingsAsync();
        DeviceSettings? kept = null;
        try
        {
            kept = json is null ? null : JsonSerializer.Deserialize(json, ClientJson.Default.DeviceSettings);
        }
        catch (JsonException)
        {
            // Settings that cannot be read are only preferences: start with the usual ones.
        }

        Settings = kept ?? new DeviceSettings();
        if (Settings.Language is null || Settings.Device.Length == 0)
        {
            var language = Settings.Language ?? await device.PreferredLanguageAsync();
            await ChangeAsync(s =>
                s with
                {
                    Language = language == "es" ? "es" : "en",
                    Device = s.Device.Length > 0 ? s.Device : Guid.CreateVersion7().ToString("N")[^8..],
                }
            );
        }
    }

    /// <summary>Changes the settings and keeps them.</summary>
    public async Task ChangeAsync(Func<DeviceSettings, DeviceSettings> change)
    {
        Settings = change(Settings);
        await device.KeepSettingsAsync(JsonSerializer.Serialize(Settings, ClientJson.Default.DeviceSettings));
        Changed?.Invoke();
    }
}
