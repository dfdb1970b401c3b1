using System.Diagnostics.CodeAnalysis;
using Microsoft.Extensions.DependencyInjection;

namespace Rinsewright.Client.Shell;

/// <summary>The one object of a type that comes with the late screens: made when it is asked for first, so that the first page needs nothing of its library.</summary>
public sealed class Late<[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicConstructors)] T>(IServiceProvider services)
    where T : class
{
    /// <summary>The object.</summary>
    public T Its { get; } = ActivatorUtilities.CreateInstance<T>(services);
}
