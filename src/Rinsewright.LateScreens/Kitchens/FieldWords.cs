using Rinsewright.Client.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>Values of a kitchen's fields as they are read, not typed.</summary>
public static class FieldWords
{
    /// <summary>The value of a field; days in words where the field is a day (<c>nextVisit</c>, <c>followUps.*.due</c>, <c>water.*.on</c>) and the value is one.</summary>
    public static string Value(string path, string value, Words words) =>
        path.Split('.')[^1] is KitchenPaths.NextVisit or "on" or "due" && FollowUp.Day(value) is { } day ? words.Day(day) : value;
}
