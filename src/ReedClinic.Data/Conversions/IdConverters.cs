using System.Linq.Expressions;
using System.Reflection;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Conversions;

/// <summary>
/// Every <c>readonly record struct SomethingId(Guid Value)</c> of Domain is stored as its Guid, without a word of configuration.
/// </summary>
internal static class IdConverters
{
    public static void AddTo(ModelConfigurationBuilder conventions)
    {
        foreach (var id in typeof(AccountId).Assembly.GetExportedTypes().Where(IsId))
        {
            conventions.Properties(id).HaveConversion(typeof(IdConverter<>).MakeGenericType(id));
        }
    }

    private static bool IsId(Type type) =>
        type.IsValueType
        && type.Name.EndsWith("Id", StringComparison.Ordinal)
        && type.GetProperties() is [{ Name: "Value" } value]
        && value.PropertyType == typeof(Guid);
}

/// <summary>Between an id and its Guid.</summary>
/// <typeparam name="TId">A record struct with one Guid called Value.</typeparam>
internal sealed class IdConverter<TId>() : ValueConverter<TId, Guid>(Out(), In())
    where TId : struct
{
    private static Expression<Func<TId, Guid>> Out()
    {
        var id = Expression.Parameter(typeof(TId));
        return Expression.Lambda<Func<TId, Guid>>(Expression.Property(id, "Value"), id);
    }

    private static Expression<Func<Guid, TId>> In()
    {
        var value = Expression.Parameter(typeof(Guid));
        var constructor = typeof(TId).GetConstructor(BindingFlags.Public | BindingFlags.Instance, [typeof(Guid)])!;
        return Expression.Lambda<Func<Guid, TId>>(Expression.New(constructor, value), value);
    }
}
