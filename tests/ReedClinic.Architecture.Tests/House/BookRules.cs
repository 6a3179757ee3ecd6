using System.Reflection;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>A Book's public method says who asks; one that writes says which operation it is.</summary>
public static class BookRules
{
    public static IEnumerable<string> Violations(IEnumerable<Type> types, IReadOnlyDictionary<string, string> exceptions) =>
        from book in types
        where book.Name.EndsWith("Book", StringComparison.Ordinal) && book is { IsClass: true, IsPublic: true } or { IsNestedPublic: true }
        from method in book.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        where typeof(Task).IsAssignableFrom(method.ReturnType)
        let name = $"{book.Name}.{method.Name}"
        where !exceptions.ContainsKey(name)
        from violation in ViolationsOf(method)
        select $"{name} {violation}";

    private static IEnumerable<string> ViolationsOf(MethodInfo method)
    {
        var parameters = method.GetParameters();
        if (parameters.FirstOrDefault()?.ParameterType != typeof(Actor))
        {
            yield return "does not take the Actor first";
        }

        if (Writes(method) && parameters.All(parameter => parameter.ParameterType != typeof(OperationId)))
        {
            yield return "writes without an OperationId";
        }

        if (parameters.LastOrDefault()?.ParameterType != typeof(CancellationToken))
        {
            yield return "does not end with a CancellationToken";
        }
    }

    private static bool Writes(MethodInfo method) =>
        method.ReturnType is { IsGenericType: true } task
        && task.GetGenericArguments()[0] is { IsGenericType: true } outcome
        && outcome.GetGenericTypeDefinition() == typeof(Outcome<>);
}
