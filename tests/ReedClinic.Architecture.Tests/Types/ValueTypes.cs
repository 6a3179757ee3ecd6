using System.Reflection;
using System.Runtime.CompilerServices;

namespace ReedClinic.Architecture.Tests.Types;

/// <summary>Domain's values never change once made: readonly record structs, and records without setters.</summary>
public static class ValueTypes
{
    public static IEnumerable<string> Violations(IEnumerable<Type> types) =>
        types.Where(type => !type.IsEnum && !IsMadeByTheCompiler(type)).SelectMany(ViolationsOf);

    private static bool IsMadeByTheCompiler(Type type) =>
        type.IsDefined(typeof(CompilerGeneratedAttribute), false) || type.FullName?.Contains('<', StringComparison.Ordinal) == true;

    private static IEnumerable<string> ViolationsOf(Type type)
    {
        var isRecord = IsRecord(type);
        if (type.IsValueType && !(isRecord && type.IsDefined(typeof(IsReadOnlyAttribute), false)))
        {
            yield return $"{type} is a struct, but no readonly record struct";
        }

        foreach (var property in isRecord ? type.GetProperties(BindingFlags.Public | BindingFlags.Instance) : [])
        {
            if (property.SetMethod is { IsPublic: true } setter && !IsInit(setter))
            {
                yield return $"{type}.{property.Name} can be set after the record is made";
            }
        }

        foreach (var field in type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static).Where(field => !field.IsLiteral && !field.IsInitOnly))
        {
            yield return $"{type}.{field.Name} is a public field that can be written";
        }
    }

    private static bool IsRecord(Type type) =>
        type.GetMethod("PrintMembers", BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public | BindingFlags.DeclaredOnly) is not null;

    private static bool IsInit(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
