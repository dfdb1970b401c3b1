using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Rinsewright.Contracts;

namespace Rinsewright.Server.Hosting;

/// <summary>How JSON is read and written here: as the contracts say, and refusing what a contract cannot do without.</summary>
public static class Json
{
    /// <summary>Sets it for every endpoint.</summary>
    public static void AddJson(this IServiceCollection services) => services.ConfigureHttpJsonOptions(o => Set(o.SerializerOptions));

    /// <summary>The same rules for what is read by hand.</summary>
    public static JsonSerializerOptions Options { get; } = Made();

    private static JsonSerializerOptions Made()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web);
        Set(options);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private static void Set(JsonSerializerOptions options)
    {
        options.DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.RespectNullableAnnotations = true;
        options.TypeInfoResolverChain.Clear(); // the framework's own, which would answer before ours for what is not in the contracts
        options.TypeInfoResolverChain.Add(ContractsJson.Default.WithAddedModifier(RequireWhatMayNotBeAbsent));
        options.TypeInfoResolverChain.Add(new DefaultJsonTypeInfoResolver { Modifiers = { RequireWhatMayNotBeAbsent } });
    }

    // Nulls are left out when writing, so a nullable field may be absent when reading; any other field without a default may not.
    private static void RequireWhatMayNotBeAbsent(JsonTypeInfo type)
    {
        foreach (var property in type.Properties)
        {
            if (property.AssociatedParameter is { HasDefaultValue: false, IsNullable: false })
            {
                property.IsRequired = true;
            }
        }
    }
}
