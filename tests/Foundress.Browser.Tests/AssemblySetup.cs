using Foundress.Browser.Tests;

// One browser, one publish, one test at a time: two cores serve a browser, a host and a publish.
[assembly: CollectionBehavior(CollectionBehavior.CollectionPerAssembly)]
[assembly: AssemblyFixture(typeof(PublishedApp))]
