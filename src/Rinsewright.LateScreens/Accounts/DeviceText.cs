using Rinsewright.Contracts.Language;

namespace Rinsewright.Client.Accounts;

/// <summary>What a browser says of itself, in words a person knows. What is not known is shown as it is.</summary>
public static class DeviceText
{
    private static readonly (string Mark, string Name)[] Systems =
    [
        ("iPhone", "iPhone"),
        ("iPad", "iPad"),
        ("Android", "Android"),
        ("Windows", "Windows"),
        ("Mac OS X", "Mac"),
        ("CrOS", "ChromeOS"),
        ("Linux", "Linux"),
    ];

    // The order matters: each names those after it as well.
    private static readonly (string Mark, string Name)[] Browsers =
    [
        ("Edg", "Edge"),
        ("Firefox/", "Firefox"),
        ("FxiOS", "Firefox"),
        ("Chrome/", "Chrome"),
        ("CriOS", "Chrome"),
        ("Safari/", "Safari"),
    ];

    /// <summary>Browser and system.</summary>
    public static string Of(string device, Words words)
    {
        var system = Array.Find(Systems, s => device.Contains(s.Mark, StringComparison.Ordinal)).Name;
        var browser = Array.Find(Browsers, b => device.Contains(b.Mark, StringComparison.Ordinal)).Name;
        return device.Length == 0 ? words["account.device-unknown"]
            : system is null || browser is null ? device
            : $"{browser}, {system}";
    }
}
