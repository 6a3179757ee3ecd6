using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Sizes;

public sealed class SizeTests
{
    /// <summary>Longer on purpose: the method, and why splitting it would hide what it does.</summary>
    private static readonly Dictionary<string, string> LongOnPurpose = [];

    [Fact]
    public void Pages_and_components_are_short() => Found.None(SizeLimits.LongMarkup(Repository.Razor));

    [Fact]
    public void A_long_page_and_a_long_component_are_seen()
    {
        var page = new Source("P.razor", "@page \"/\"\n" + new string('\n', SizeLimits.Page + 1) + "<p></p>");
        var component = new Source("C.razor", new string('\n', SizeLimits.Page + 1) + "<p></p>");

        Found.One(SizeLimits.LongMarkup([page, component]), "P.razor: page");
        Found.One(SizeLimits.LongMarkup([component with { Text = new string('\n', SizeLimits.Component + 1) + "<p></p>" }]), "C.razor: component");
    }

    [Fact]
    public void Classes_are_short() => Found.None(SizeLimits.LongTypes(Repository.CSharp));

    [Fact]
    public void A_long_class_is_seen_even_in_two_parts()
    {
        var half = new string('\n', SizeLimits.Class / 2);
        var first = new Source("A.cs", $"namespace N; public partial class Big {{ {half} }}");
        var second = new Source("B.cs", $"namespace N; public partial class Big {{ {half} }}");

        Found.One(SizeLimits.LongTypes([first, second]), "N.Big");
        Found.None(SizeLimits.LongTypes([first, second with { Text = second.Text.Replace("Big", "Other", StringComparison.Ordinal) }]));
    }

    [Fact]
    public void A_value_type_may_be_longer_but_not_without_end()
    {
        var longer = new Source("V.cs", $"public readonly record struct V {{ {new string('\n', SizeLimits.Class)} }}");

        Found.None(SizeLimits.LongTypes([longer]));
        Found.One(SizeLimits.LongTypes([longer with { Text = longer.Text.Replace("{", new string('\n', 100) + "{", StringComparison.Ordinal) }]), "V");
    }

    [Fact]
    public void Methods_are_short() => Found.None(SizeLimits.LongMethods(Repository.CSharp, LongOnPurpose));

    [Fact]
    public void Every_exception_is_still_needed() => Found.None(SizeLimits.IdleExceptions(Repository.CSharp, LongOnPurpose));

    [Fact]
    public void A_long_method_is_seen_unless_it_is_listed()
    {
        var planted = new Source("M.cs", $"class C {{ void Go() {{ {new string('\n', SizeLimits.Method)} }} }}");

        Found.One(SizeLimits.LongMethods([planted], new Dictionary<string, string>()), "C.Go");
        Found.None(SizeLimits.LongMethods([planted], new Dictionary<string, string> { ["C.Go"] = "planted" }));
        Found.One(SizeLimits.IdleExceptions([], new Dictionary<string, string> { ["C.Go"] = "planted" }), "C.Go");
    }
}
