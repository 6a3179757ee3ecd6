using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Sizes;

/// <summary>How long a thing may be, in lines with its braces. `partial` counts all parts together.</summary>
public static class SizeLimits
{
    public const int Page = 130;
    public const int Component = 150;
    public const int Class = 300;
    public const int ValueType = 400;
    public const int Method = 40;

    public static IEnumerable<string> LongMarkup(IEnumerable<Source> razor) =>
        from file in razor
        let isPage = file.Text.Split('\n').Any(line => line.StartsWith("@page ", StringComparison.Ordinal))
        let limit = isPage ? Page : Component
        where file.Lines > limit
        select $"{file.Path}: {(isPage ? "page" : "component")} of {file.Lines} lines (at most {limit})";

    public static IEnumerable<string> LongTypes(IEnumerable<Source> files) =>
        from file in files
        from type in Root(file).DescendantNodes().OfType<TypeDeclarationSyntax>()
        group (file.Path, Lines: LinesOf(type), Type: type) by FullName(type) into parts
        let lines = parts.Sum(part => part.Lines)
        let limit = parts.All(part => IsValueType(part.Type)) ? ValueType : Class
        where lines > limit
        select $"{parts.First().Path}: {parts.Key} of {lines} lines (at most {limit})";

    public static IEnumerable<string> LongMethods(IEnumerable<Source> files, IReadOnlyDictionary<string, string> exceptions) =>
        from file in files
        from method in Root(file).DescendantNodes().OfType<BaseMethodDeclarationSyntax>()
        let lines = LinesOf(method)
        let name = $"{((TypeDeclarationSyntax)method.Parent!).Identifier.Text}.{NameOf(method)}"
        where lines > Method && !exceptions.ContainsKey(name)
        select $"{file.Path}: {name} of {lines} lines (at most {Method})";

    public static IEnumerable<string> IdleExceptions(IEnumerable<Source> files, IReadOnlyDictionary<string, string> exceptions)
    {
        var longOnes = LongMethods(files, new Dictionary<string, string>()).ToList();
        return exceptions.Keys.Where(name => !longOnes.Any(found => found.Contains($": {name} of ", StringComparison.Ordinal)));
    }

    private static SyntaxNode Root(Source file) => CSharpSyntaxTree.ParseText(file.Text).GetRoot();

    private static bool IsValueType(TypeDeclarationSyntax type) =>
        type is StructDeclarationSyntax || (type is RecordDeclarationSyntax record && record.ClassOrStructKeyword.IsKind(SyntaxKind.StructKeyword));

    private static int LinesOf(SyntaxNode node)
    {
        var span = node.SyntaxTree.GetLineSpan(node.Span);
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }

    private static string FullName(TypeDeclarationSyntax type)
    {
        var outer = type.Ancestors().OfType<TypeDeclarationSyntax>().Select(parent => parent.Identifier.Text).Reverse();
        var space = type.Ancestors().OfType<BaseNamespaceDeclarationSyntax>().Select(parent => parent.Name.ToString()).Reverse();
        return string.Join('.', space.Concat(outer).Append(type.Identifier.Text + type.TypeParameterList));
    }

    private static string NameOf(BaseMethodDeclarationSyntax method) => method switch
    {
        MethodDeclarationSyntax named => named.Identifier.Text,
        ConstructorDeclarationSyntax => "constructor",
        _ => "operator",
    };
}
