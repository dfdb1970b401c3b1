using System.Globalization;
using System.Runtime.CompilerServices;

namespace Rinsewright.Tests.Shared;

/// <summary>
/// With RINSEWRIGHT_TEST_CULTURE=decimal-comma every test runs where people write 71,4 and 25.11.2026. The culture is made by hand from the
/// invariant one, so that it needs no language data on the machine and the product keeps its own globalization setting.
/// </summary>
internal static class Culture
{
#pragma warning disable CA2255 // a test assembly is the application here
    [ModuleInitializer]
#pragma warning restore CA2255
    internal static void Set()
    {
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_TEST_CULTURE") != "decimal-comma")
        {
            return;
        }

        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.PercentDecimalSeparator = ",";
        culture.NumberFormat.NegativeSign = "\u2212";
        culture.DateTimeFormat.ShortDatePattern = "dd.MM.yyyy";
        culture.DateTimeFormat.DateSeparator = ".";
        culture.DateTimeFormat.ShortTimePattern = "HH.mm";
        culture.DateTimeFormat.LongTimePattern = "HH.mm.ss";
        culture.DateTimeFormat.TimeSeparator = ".";
        CultureInfo.DefaultThreadCurrentCulture = culture;
        CultureInfo.DefaultThreadCurrentUICulture = culture;
        CultureInfo.CurrentCulture = culture;
        CultureInfo.CurrentUICulture = culture;
    }
}
